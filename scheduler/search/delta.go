package search

import (
	"club/quadrille/scheduler/measure"
)

// Moves exchange the occupants of two seats of one round. Each changes the tallies of at most twelve
// pairs, so that its cost is known in constant time: a dozen looks into the table of margins.

// swapDelta is the change of weight if the occupants of seats s and t of round r change places, but
// for what changes by who sits out. The seats must not be one team's, and not both on the bench.
func (b *board) swapDelta(r, s, t int) int {
	d := b.pairDelta(r, s, t)
	if b.leveling != nil {
		d += b.levelDelta(r, s, t)
	}
	return d
}

// pairDelta is the part of swapDelta that concerns who plays with whom.
func (b *board) pairDelta(r, s, t int) int {
	row, seats := b.row(r), b.shapes[r].Seats()
	if s > t {
		s, t = t, s
	}
	switch {
	case t >= seats:
		return b.leave(row, s) + b.join(row, s, row[t])
	case s>>2 == t>>2:
		return b.resplit(row, s, t)
	default:
		return b.leave(row, s) + b.leave(row, t) + b.join(row, s, row[t]) + b.join(row, t, row[s])
	}
}

// replaces tells whether one of the seats is on the bench.
func (b *board) replaces(s step) bool {
	seats := b.shapes[s.r].Seats()
	return (s.s < seats) != (s.t < seats)
}

// leave is the change if the occupant of seat s leaves the game.
func (b *board) leave(row []int32, s int) int {
	m := b.margin[int(row[s])*b.n.People:]
	return int(m[row[s^1]].unpart + m[row[s^2]].unopposed + m[row[s^3]].unopposed)
}

// join is the change if person i takes seat s in place of its occupant, who has left.
func (b *board) join(row []int32, s int, i int32) int {
	m := b.margin[int(i)*b.n.People:]
	return int(m[row[s^1]].partner + m[row[s^2]].oppose + m[row[s^3]].oppose)
}

// resplit is the change if two opponents of one game change places: each gets the other's partner.
// The pairs' meetings stay; partners become opponents and opponents partners.
func (b *board) resplit(row []int32, s, t int) int {
	x, y, px, py := int(row[s]), int(row[t]), int(row[s^1]), int(row[t^1])
	n := b.n.People
	return b.turn(x*n+px, -1) + b.turn(y*n+py, -1) + b.turn(x*n+py, 1) + b.turn(y*n+px, 1)
}

// turn is the change if a pair meets once more as partners and once less as opponents, or with -1 the
// other way round.
func (b *board) turn(at, by int) int {
	t := b.pair[at]
	p, o := int(t.P), int(t.O)
	d := pairCost(p+by, o-by) - pairCost(p, o)
	if w := b.n.Wishes; w != nil && w.Asked[at] {
		d += wishCost(w, at, p+by, o-by) - wishCost(w, at, p, o)
	}
	return d
}

// swap lets the occupants of seats s and t of round r change places; d is the move's swapDelta.
func (b *board) swap(r, s, t, d int) {
	row, seats := b.row(r), b.shapes[r].Seats()
	if s > t {
		s, t = t, s
	}
	if b.leveling != nil {
		b.relevel(r, s, t)
	}
	switch {
	case s>>2 == t>>2:
		b.tally(row, s, ^uint16(0))
	case t < seats:
		b.tallyOne(row, s, ^uint16(0))
		b.tallyOne(row, t, ^uint16(0))
	default:
		b.tallyOne(row, s, ^uint16(0))
		for _, i := range [2]int32{row[s], row[t]} {
			b.rest += b.benchDelta(i, r)
			b.flip(i, r)
		}
	}
	row[s], row[t] = row[t], row[s]
	where := b.where[r*b.n.People : (r+1)*b.n.People]
	where[row[s]], where[row[t]] = int32(s), int32(t)
	switch {
	case s>>2 == t>>2:
		b.tally(row, s, 1)
	case t < seats:
		b.tallyOne(row, s, 1)
		b.tallyOne(row, t, 1)
	default:
		b.tallyOne(row, s, 1)
	}
	b.play += d
}

// tallyOne adds one, or with the greatest uint16 minus one, to the tallies of the three pairs that
// the occupant of a seat makes.
func (b *board) tallyOne(row []int32, s int, by uint16) {
	b.count(row[s], row[s^1], by, 0)
	b.count(row[s], row[s^2], 0, by)
	b.count(row[s], row[s^3], 0, by)
}

// tally adds to the tallies of the four pairs of a game that a new split changes.
func (b *board) tally(row []int32, s int, by uint16) {
	g := row[s&^3 : s&^3+4]
	b.count(g[0], g[1], by, 0)
	b.count(g[2], g[3], by, 0)
	b.count(g[0], g[2], 0, by)
	b.count(g[0], g[3], 0, by)
	b.count(g[1], g[2], 0, by)
	b.count(g[1], g[3], 0, by)
}

// count adds to the tallies of a pair, seen from both sides.
func (b *board) count(i, j int32, p, o uint16) {
	at, back := int(i)*b.n.People+int(j), int(j)*b.n.People+int(i)
	t := b.pair[at]
	if p != 0 {
		b.again -= max(0, int(t.P)-1)
		b.again += max(0, int(t.P+p)-1)
	}
	if o != 0 {
		b.opposed -= measure.Pairs(int(t.O))
		b.opposed += measure.Pairs(int(t.O + o))
	}
	t.P += p
	t.O += o
	b.pair[at], b.pair[back] = t, t
	m := b.marginAt(at, t)
	b.margin[at], b.margin[back] = m, m
}
