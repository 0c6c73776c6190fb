package session

import (
	"slices"

	"club/quadrille/scoring"
	"club/quadrille/session/standings"
)

// Place is a line of the table with how it came about.
type Place struct {
	standings.Row
	People []PersonID // whom the line is about: one person, or a set pair
	Was    int        // the place before the newest round, 0 for who had none
	Form   []Outcome  // of the games that count, in the order of their calls
}

// Moved is how many places up somebody went since the newest round, negative for down. Ok is false for
// who had no place before.
func (p Place) Moved() (up int, ok bool) { return p.Was - p.Rank, p.Was > 0 }

// Outcome is what became of a game for one of its teams.
type Outcome uint8

// The outcomes.
const (
	Lost Outcome = iota
	Level
	Won
)

// Places is the table of a night with the places before its newest round. In the rolling flow, which has
// no rounds, a round is as many games as there are courts.
func Places(club *Club, n *Night) []Place {
	rows := Standings(club, n)
	was := map[string]int{}
	for _, r := range Standings(club, n.beforeNewest()) {
		was[r.Name] = r.Rank
	}
	people, form := map[string][]PersonID{}, map[string][]Outcome{}
	for i := range n.Games {
		g := &n.Games[i]
		if g.Final == nil || !g.counts() {
			continue
		}
		winner, decided := g.Final.Winner()
		for side, s := range []Team{g.A, g.B} {
			o := Level
			if decided {
				o = Lost
				if winner == scoring.Team(side) {
					o = Won
				}
			}
			for _, row := range g.rows(s) {
				name := g.competitors(row, club.Name)[0]
				people[name], form[name] = slices.DeleteFunc(members(row), func(id PersonID) bool { return id == "" }), append(form[name], o)
			}
		}
	}
	out := make([]Place, 0, len(rows))
	for _, r := range rows {
		out = append(out, Place{Row: r, People: people[r.Name], Was: was[r.Name], Form: form[r.Name]})
	}
	return out
}

// rows are the lines of the table that a team's game counts for: one for a set pair, else one a player.
func (g *Game) rows(s Team) []Team {
	if s[1] == "" || len(g.competitors(s, func(id PersonID) string { return string(id) })) == 1 {
		return []Team{s}
	}
	return []Team{{s[0]}, {s[1]}}
}

// beforeNewest is the night without the results of its newest round.
func (n *Night) beforeNewest() *Night {
	c := n.clone()
	if k := len(c.Rounds); k > 0 {
		for i := range c.Games {
			if c.Games[i].Round == k {
				c.Games[i].Final = nil
			}
		}
		return c
	}
	left := max(1, len(c.OpenCourts()))
	for i := len(c.Games) - 1; i >= 0 && left > 0; i-- {
		if c.Games[i].Final != nil {
			c.Games[i].Final = nil
			left--
		}
	}
	return c
}
