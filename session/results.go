package session

import (
	"club/quadrille/scoring"
	"club/quadrille/session/standings"
)

// Results lists the finished games of a night for the table. Games that were set aside are left
// out; a game that somebody had to give up counts for those who were still there.
func (n *Night) Results(name func(PersonID) string) []standings.Result {
	var out []standings.Result
	for i := range n.Games {
		g := &n.Games[i]
		if g.Final == nil || g.Final.How() == scoring.Void {
			continue
		}
		r := standings.Result{A: sideNames(g.A, name), B: sideNames(g.B, name)}
		s := g.Final.Score()
		r.ScoreA, r.ScoreB = s.A, s.B
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

func sideNames(s Side, name func(PersonID) string) []string {
	if s[1] == "" {
		return []string{name(s[0])}
	}
	return []string{name(s[0]), name(s[1])}
}

// Standings is the table of a night.
func Standings(club *Club, n *Night) []standings.Row {
	return standings.Table(n.Results(club.Name), nil)
}
