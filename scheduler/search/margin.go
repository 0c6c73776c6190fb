package search

import (
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// margin is what one meeting more or less of a pair costs, ready for the search to add up.
type margin struct {
	partner, oppose   int32 // one more game as partners, as opponents
	unpart, unopposed int32 // one less
}

// pairCost is what a pair of people costs who partnered p times and opposed o times.
func pairCost(p, o int) int {
	w := &measure.Usual
	return w[measure.Partners]*measure.Pairs(p) + w[measure.Opponents]*measure.Pairs(o) + w[measure.Meetings]*measure.Pairs(p+o)
}

// usual holds the margins of pairs of whom nothing is asked, by how often they partnered and opposed.
const usualP, usualO = 8, 16

var usual = func() (table [usualP][usualO]margin) {
	for p := range usualP {
		for o := range usualO {
			table[p][o] = marginOf(p, o, pairCost)
		}
	}
	return table
}()

// marginOf works out the margins from the cost at the four neighbours.
func marginOf(p, o int, cost func(p, o int) int) margin {
	now := cost(p, o)
	m := margin{partner: int32(cost(p+1, o) - now), oppose: int32(cost(p, o+1) - now)}
	if p > 0 {
		m.unpart = int32(cost(p-1, o) - now)
	}
	if o > 0 {
		m.unopposed = int32(cost(p, o-1) - now)
	}
	return m
}

// marginAt is the margins of an entry of the pair table.
func (b *board) marginAt(at int, t night.Tally) margin {
	asked := b.n.Wishes != nil && b.n.Wishes.Asked[at]
	if !asked && t.P < usualP && t.O < usualO {
		return usual[t.P][t.O]
	}
	return marginOf(int(t.P), int(t.O), func(p, o int) int {
		if !asked {
			return pairCost(p, o)
		}
		return pairCost(p, o) + wishCost(b.n.Wishes, at, p, o)
	})
}

// wishCost is the weight of how far two people who partnered p times and opposed o times are from what is
// asked of them: games that must not be, and partnerships missing or too many.
func wishCost(w *night.Wishes, at, p, o int) int {
	s := wishScore(w, at, p, o)
	return s.Weight(&measure.Usual)
}

func wishScore(w *night.Wishes, at, p, o int) (s measure.Score) {
	if w.Apart[at] {
		s[measure.Broken] += p + o
	}
	if w.Unteam[at] {
		s[measure.Broken] += p
	}
	if t := int(w.Times[at]); t >= 0 {
		s[measure.Missing] = max(t-p, p-t)
	}
	return s
}
