package main

import (
	"math/rand/v2"

	"club/quadrille/scheduler/design"
	"club/quadrille/scheduler/design/symmetry"
)

// puzzle is a try at the base rounds of a starter: one person of each orbit under the turn, seated at
// the tables that represent the round, with a count of what is wrong.
type puzzle struct {
	moves   []motion // of each base round
	class   []int    // people×people
	people  int
	exact   bool // pairs must meet exactly as often as wanted, not at most so often
	tables  []table
	pools   [][]seat // seats that may change occupants with each other
	pool    []int    // for each seat, counted through all pools, its pool
	partner []int    // for each class of pairs: what the tables contribute, less what is wanted
	oppose  []int
	cost    int
	last    step
}

// table represents repeat tables of the base round: its images under the turn.
type table struct {
	seats  design.Table
	repeat int
	round  int
}

// seat is one place of a table. A seat for a whole orbit fills places 1 to 3 of a table that the
// turn keeps.
type seat struct {
	table, place int
	whole        bool
}

// newPuzzle seats the people of the starter's base rounds at random.
func newPuzzle(s design.Starter, rng *rand.Rand) *puzzle {
	g := s.Group
	pairs := symmetry.PairsOf(g)
	p := &puzzle{
		people: g.People(), exact: s.Kind != design.QuadCycle,
		partner: make([]int, pairs.Classes()), oppose: make([]int, pairs.Classes()),
	}
	for a := range p.people {
		for b := range p.people {
			c := -1
			if a != b {
				c = pairs.Class(a, b)
				once := 2 * pairs.Size(c) / g.Ring.N()
				partner, oppose := s.Wanted(a, b)
				p.partner[c], p.oppose[c] = -once*partner, -once*oppose
			}
			p.class = append(p.class, c)
		}
	}
	for round := range s.Bases {
		p.moves = append(p.moves, motionOf(s, round))
		if s.Kind == design.CoupleCycle {
			p.seatCouples(s, round, rng)
		} else {
			p.seatRound(s, round, rng)
		}
	}
	for c := range p.partner {
		p.cost += p.fault(c)
	}
	for t := range p.tables {
		p.count(t, 1)
	}
	return p
}

// rounds returns the tables sorted by base round.
func (p *puzzle) rounds() [][]design.Table {
	var rounds [][]design.Table
	for _, t := range p.tables {
		if t.round == len(rounds) {
			rounds = append(rounds, nil)
		}
		if t.repeat > 0 {
			rounds[t.round] = append(rounds[t.round], t.seats)
		}
	}
	return rounds
}

// fault is the square of what is too much or too little in one class of pairs.
func (p *puzzle) fault(c int) int {
	if p.exact {
		return p.partner[c]*p.partner[c] + p.oppose[c]*p.oppose[c]
	}
	over := max(0, p.partner[c]+p.oppose[c])
	return over * over
}

// count adds (sign 1) or takes away (-1) what a table contributes, and keeps the cost.
func (p *puzzle) count(t, sign int) {
	s, add := &p.tables[t].seats, 2*p.tables[t].repeat*sign
	if add == 0 {
		return
	}
	for i := 1; i < 4; i++ {
		row := p.class[s[i]*p.people : (s[i]+1)*p.people]
		for j := range i {
			c := row[s[j]]
			p.cost -= p.fault(c)
			if i/2 == j/2 {
				p.partner[c] += add
			} else {
				p.oppose[c] += add
			}
			p.cost += p.fault(c)
		}
	}
}

// step remembers how two tables were before a move.
type step struct {
	a, b             int
	beforeA, beforeB design.Table
}

func (p *puzzle) price() int { return p.cost }

// shake lets the occupants of two random seats, or of one, change places, each perhaps turned.
func (p *puzzle) shake(rng *rand.Rand) {
	pool := p.pools[p.pool[rng.IntN(len(p.pool))]]
	a, b := pool[rng.IntN(len(pool))], pool[rng.IntN(len(pool))]
	p.last = step{a.table, b.table, p.tables[a.table].seats, p.tables[b.table].seats}
	turn := p.moves[p.tables[a.table].round]
	x, y := turn.some(p.last.beforeA[a.place], rng), turn.some(p.last.beforeB[b.place], rng)
	p.change(p.last, func() {
		p.put(a, y)
		if a != b {
			p.put(b, x)
		}
	})
}

// back undoes the last move.
func (p *puzzle) back() {
	p.change(p.last, func() {
		p.tables[p.last.a].seats, p.tables[p.last.b].seats = p.last.beforeA, p.last.beforeB
	})
}

// change does something to the two tables of a step and keeps the cost.
func (p *puzzle) change(s step, do func()) {
	p.count(s.a, -1)
	if s.b != s.a {
		p.count(s.b, -1)
	}
	do()
	p.count(s.a, 1)
	if s.b != s.a {
		p.count(s.b, 1)
	}
}

// put seats a person, or the whole orbit of one.
func (p *puzzle) put(s seat, a int) {
	t := &p.tables[s.table].seats
	t[s.place] = a
	if s.whole {
		turn := p.moves[p.tables[s.table].round].next
		t[2] = turn[a]
		t[3] = turn[t[2]]
	}
}
