package session

import (
	"slices"
	"strings"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session/standings"
)

// Results lists the finished games of a night for the table. Games that were set aside never
// count. Walkovers and retired games are left out, as the governing body's round robin does (USA
// Pickleball Official Rulebook 2025, 12.C.4.a), unless they were to count when the game was called; then
// the team that was still there gets the fewest points that win (12.F).
func (n *Night) Results(name func(PersonID) string) []standings.Result {
	var out []standings.Result
	for i := range n.Games {
		g := &n.Games[i]
		if g.Final == nil || !g.counts() {
			continue
		}
		s := g.Rules.Credit(*g.Final)
		r := standings.Result{A: g.competitors(g.A, name), B: g.competitors(g.B, name), ScoreA: s.A, ScoreB: s.B}
		if w, ok := g.Final.Winner(); ok {
			r.Winner = -1
			if w == scoring.B {
				r.Winner = 1
			}
		}
		out = append(out, r)
	}
	return out
}

// counts tells whether a finished game counts for the table.
func (g *Game) counts() bool {
	switch g.Final.How() {
	case scoring.Void:
		return false
	case scoring.Walkover, scoring.Retired:
		return g.Stopped
	}
	return true
}

// competitors are the names under which a team's result counts: its players, or the pair where the game
// was called for set pairs.
func (g *Game) competitors(s Side, name func(PersonID) string) []string {
	if g.Format == scheduler.Pairs && s[1] != "" {
		return []string{rowName(s, name)}
	}
	return sideNames(s, name)
}

// rowName is the name of a row of the table: that of a person, or of both of a set pair.
func rowName(s Side, name func(PersonID) string) string {
	names := sideNames(s, name)
	slices.Sort(names)
	return strings.Join(names, " & ")
}

func sideNames(s Side, name func(PersonID) string) []string {
	if s[1] == "" {
		return []string{name(s[0])}
	}
	return []string{name(s[0]), name(s[1])}
}

// Standings is the table of a night.
func Standings(club *Club, n *Night) []standings.Row {
	return standings.Table(n.Results(club.Name), n.lots(club.Name))
}
