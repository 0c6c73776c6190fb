package session

import (
	"fmt"
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

// RetiredText says what comes of a game that ended by a retirement.
func RetiredText(g *Game, f scoring.Final) string {
	if !g.Stopped {
		return "Not in the table; lost in the ratings."
	}
	s := g.Rules.Credit(f)
	return fmt.Sprintf("In the table %d-%d; lost in the ratings.", s.A, s.B)
}

// RetireNote says what comes of it when a team of g retires.
func RetireNote(g *Game) string {
	if !g.Stopped {
		return "The other team wins. The game is left out of the table; the ratings count it as it stands."
	}
	return "The other team wins, and the table gives it the fewest points that win; the ratings count the game as it stands."
}

// TableNote says which finished games of a night the table leaves out, and which it counts that were not played
// to their end. It is empty where all were played or timed.
func (n *Night) TableNote() string {
	ways := []scoring.How{scoring.Retired, scoring.Walkover, scoring.Void}
	out, in := map[scoring.How]int{}, map[scoring.How]int{}
	for i := range n.Games {
		switch g := &n.Games[i]; {
		case g.Final == nil:
		case g.counts():
			in[g.Final.How()]++
		default:
			out[g.Final.How()]++
		}
	}
	list := func(of map[scoring.How]int) string {
		var parts []string
		for _, how := range ways {
			if of[how] > 0 {
				parts = append(parts, fmt.Sprintf("%d %v", of[how], how))
			}
		}
		return strings.Join(parts, ", ")
	}
	var say []string
	if text := list(out); text != "" {
		say = append(say, "Left out: "+text+".")
	}
	if text := list(in); text != "" {
		say = append(say, "Counted with the fewest points that win: "+text+".")
	}
	if out[scoring.Retired]+in[scoring.Retired] > 0 {
		say = append(say, "Ratings count retired games.")
	}
	return strings.Join(say, " ")
}

// competitors are the names under which a team's result counts: its players, or the pair where the game
// was called for set pairs.
func (g *Game) competitors(s Team, name func(PersonID) string) []string {
	if g.Format == scheduler.Pairs && s[1] != "" {
		return []string{rowName(s, name)}
	}
	return teamNames(s, name)
}

// rowName is the name of a row of the table: that of a person, or of both of a set pair.
func rowName(s Team, name func(PersonID) string) string {
	names := teamNames(s, name)
	slices.Sort(names)
	return strings.Join(names, " & ")
}

func teamNames(s Team, name func(PersonID) string) []string {
	if s[1] == "" {
		return []string{name(s[0])}
	}
	return []string{name(s[0]), name(s[1])}
}

// Standings is the table of a night.
func Standings(club *Club, n *Night) []standings.Row { return n.Standings(club.Name) }

// Standings is the table of a night in which people are called by name, which must tell them apart.
func (n *Night) Standings(name func(PersonID) string) []standings.Row {
	return standings.Table(n.Results(name), n.lots(name))
}

// Partings say of each row of that table why it stands before the next.
func (n *Night) Partings(name func(PersonID) string) []standings.Parting {
	return standings.Partings(n.Results(name), n.lots(name))
}
