package session

import (
	"cmp"
	"slices"

	"club/quadrille/session/standings"
)

// EnoughGames is how many games two people must have had together before anything is said of how they do. That is our
// choice: after eight even games the 95 % range of a win share still goes from 22 to 78 %.
const EnoughGames = 8

// Company is how somebody did with another: as partners, or as opponents.
type Company struct {
	A, B  PersonID
	Games int
	Won   float64 // by A, with B or against B; a draw counts half
	Low   float64 // the 95 % range of the true win share
	High  float64
}

// Share is the share of the games that A won.
func (c Company) Share() float64 { return c.Won / float64(c.Games) }

// Enough tells whether there were enough games to say something.
func (c Company) Enough() bool { return c.Games >= EnoughGames }

// Partners lists everybody who had a partner in the span, each two once: those of whom something can be said first, best
// first by what is sure, the lower end of the range; then the others by games.
func Partners(club *Club, s Span) []Company {
	t := company{}
	club.each(s, func(g *Game, won float64) {
		t.add(g.A[0], g.A[1], won)
		t.add(g.B[0], g.B[1], 1-won)
	})
	return t.list()
}

// Against lists whom somebody has met on the other side in the span, in the order of [Partners].
func Against(club *Club, id PersonID, s Span) []Company {
	return with(club, s, func(t company, g *Game, won float64) {
		us, them := g.A, g.B
		if g.B.Has(id) {
			us, them, won = g.B, g.A, 1-won
		}
		for _, other := range them {
			if us.Has(id) && other != "" {
				t.count([2]PersonID{id, other}, won)
			}
		}
	})
}

// With lists the partners of somebody in the span, in the order of [Partners].
func With(club *Club, id PersonID, s Span) []Company {
	return with(club, s, func(t company, g *Game, won float64) {
		for _, team := range [2]Team{g.A, g.B} {
			switch {
			case team[0] == id && team[1] != "":
				t.count([2]PersonID{id, team[1]}, won)
			case team[1] == id:
				t.count([2]PersonID{id, team[0]}, won)
			}
			won = 1 - won
		}
	})
}

func with(club *Club, s Span, take func(t company, g *Game, won float64)) []Company {
	t := company{}
	club.each(s, func(g *Game, won float64) { take(t, g, won) })
	return t.list()
}

// each hands over the games of the span that count, with what team A had of the result.
func (c *Club) each(s Span, yield func(g *Game, won float64)) {
	for _, n := range c.Nights {
		if !s.has(n) {
			continue
		}
		for i := range n.Games {
			g := &n.Games[i]
			if g.Final == nil || !g.counts() || !s.takes(c, g) {
				continue
			}
			won := 0.5
			if w, ok := g.Final.Winner(); ok {
				won = float64(1 - w)
			}
			yield(g, won)
		}
	}
}

// company counts games of two people.
type company map[[2]PersonID]*Company

// add counts a game of two in one team, whoever is named first.
func (t company) add(a, b PersonID, won float64) {
	if a != "" && b != "" {
		t.count([2]PersonID{min(a, b), max(a, b)}, won)
	}
}

func (t company) count(who [2]PersonID, won float64) {
	c := t[who]
	if c == nil {
		c = &Company{A: who[0], B: who[1]}
		t[who] = c
	}
	c.Games++
	c.Won += won
}

func (t company) list() []Company {
	out := make([]Company, 0, len(t))
	for _, c := range t {
		c.Low, c.High = standings.Interval(c.Won, c.Games)
		out = append(out, *c)
	}
	slices.SortFunc(out, func(x, y Company) int {
		switch {
		case x.Enough() != y.Enough():
			if x.Enough() {
				return -1
			}
			return 1
		case x.Enough():
			if d := cmp.Compare(y.Low, x.Low); d != 0 {
				return d
			}
		}
		return cmp.Or(cmp.Compare(y.Games, x.Games), cmp.Compare(y.Won, x.Won), cmp.Compare(x.A, y.A), cmp.Compare(x.B, y.B))
	})
	return out
}
