package session

import (
	"slices"
	"strings"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session/standings"
)

// Results lists the finished games of a night for the table. Games that were set aside never
// count. Walkovers and games given up are left out, as the governing body's round robin does (USA
// Pickleball Official Rulebook 2025, 12.C.4.a), unless the settings of the night count them; then
// the side that was still there gets the fewest points that win (12.F).
func (n *Night) Results(name func(PersonID) string) []standings.Result {
	var out []standings.Result
	for i := range n.Games {
		g := &n.Games[i]
		if g.Final == nil || !n.counts(*g.Final) {
			continue
		}
		s := g.Rules.Credit(*g.Final)
		r := standings.Result{A: n.competitors(g.A, name), B: n.competitors(g.B, name), ScoreA: s.A, ScoreB: s.B}
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

// counts tells whether a game that ended so counts for the table.
func (n *Night) counts(f scoring.Final) bool {
	switch f.How() {
	case scoring.Void:
		return false
	case scoring.Walkover, scoring.Retired:
		return n.Settings.Stopped
	}
	return true
}

// competitors are the names under which a side's result counts: its persons, or the pair where
// pairs are set for the night.
func (n *Night) competitors(s Side, name func(PersonID) string) []string {
	names := sideNames(s, name)
	if n.Settings.Format == scheduler.Pairs && len(names) == 2 {
		slices.Sort(names)
		return []string{strings.Join(names, " & ")}
	}
	return names
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
