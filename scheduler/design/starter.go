package design

import (
	"slices"

	"club/quadrille/scheduler/design/ring"
	"club/quadrille/scheduler/design/symmetry"
)

// Kind says what a starter makes.
type Kind uint8

// The kinds of starters.
const (
	WhistCycle  Kind = iota // a whist tournament
	WhistFrame              // one whose base round the hole misses, to play by itself meanwhile
	WhistHole               // one in which fixed people and the hole's translates play apart at the end
	QuadCycle               // tables of four at which nobody meets twice
	CoupleCycle             // spouse-avoiding mixed doubles
)

// String names the design in one word: "whist", "quads" or "couples".
func (k Kind) String() string {
	switch k {
	case QuadCycle:
		return "quads"
	case CoupleCycle:
		return "couples"
	}
	return "whist"
}

// Starter is one round, or a few, from which a group of symmetries makes a whole design: the
// translates of the base rounds are its rounds.
type Starter struct {
	Kind   Kind
	People int            // people of the finished design
	Group  symmetry.Group // its turn keeps the base rounds
	Hole   int            // people who differ by a multiple of it never share a table of the translates
	Bases  [][]Table      // base rounds, each with one table of each orbit under the turn

	// Period is nil, or for each base round what can be added to all its people without changing
	// it; that addition then takes the place of the turn.
	Period []int
}

// recipe is a starter whose ring is made only when it is needed.
type recipe struct {
	kind       Kind
	people     int
	ring       func() *ring.Ring
	layers     int
	fixed      int
	multiplier int
	shift      int
	step       int
	cycle      int
	hole       int
	bases      [][]Table
	period     []int
}

// starter makes the ring and returns the starter.
func (c recipe) starter() Starter {
	return Starter{
		Kind: c.kind, People: c.people, Hole: c.hole, Bases: c.bases, Period: c.period,
		Group: symmetry.Group{
			Ring: c.ring(), Layers: c.layers, Fixed: c.fixed,
			Multiplier: c.multiplier, Shift: c.shift, Step: c.step, Cycle: c.cycle,
		},
	}
}

// integers makes the ring of whole numbers modulo n, or of pairs modulo n and m.
func integers(n int, m ...int) func() *ring.Ring {
	return func() *ring.Ring {
		r := ring.Integers(n)
		for _, k := range m {
			r = ring.Product(r, ring.Integers(k))
		}
		return r
	}
}

// find returns the starter of one of the recipes, by the number of people of its design.
func find(recipes []recipe, people int) (Starter, bool) {
	for _, c := range recipes {
		if c.people == people {
			return c.starter(), true
		}
	}
	return Starter{}, false
}

// Starters returns the starters that were found by computer, so that they can be looked at and
// found again (cmd/starters).
func Starters() []Starter {
	var all []Starter
	for _, c := range slices.Concat(whistRecipes, quadRecipes, restRecipes, coupleRecipes) {
		all = append(all, c.starter())
	}
	return all
}

// Rounds returns the different translates of the base rounds: all of the first, then all of the next.
func (s Starter) Rounds() [][]Table {
	var rounds [][]Table
	for i, tables := range s.Bases {
		var base []Table
		for _, t := range tables {
			base = append(base, t)
			for u := s.Turn(i, t); !u.sameFour(t); u = s.Turn(i, u) {
				base = append(base, u)
			}
		}
		n := s.Group.Ring.N()
		if s.Period != nil {
			n = s.Period[i]
		}
		for t := range n {
			rounds = append(rounds, relabelRound(base, func(p int) int { return s.Group.Translate(p, t) }))
		}
	}
	return rounds
}

// Turn returns the table to which base round i's symmetry moves a table of it: the turn of the
// group, or the translation by the round's period.
func (s Starter) Turn(i int, t Table) Table {
	if s.Period == nil {
		return t.relabel(s.Group.Turn)
	}
	return t.relabel(func(p int) int { return s.Group.Translate(p, s.Period[i]) })
}
