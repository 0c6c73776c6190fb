package search

import (
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
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
	if t >= seats {
		return b.leave(row, s) + b.join(row, s, row[t])
	}
	return b.playDelta(row, s, t)
}

// playDelta is pairDelta for two seats of games.
func (b *board) playDelta(row []int32, s, t int) int {
	if s>>2 == t>>2 {
		return b.resplit(row, s, t)
	}
	n := b.n.People
	x, y := b.margin[int(row[s])*n:][:n], b.margin[int(row[t])*n:][:n]
	p, q, u := row[s^1], row[s^2], row[s^3]
	d := x[p].unpart + y[p].partner + x[q].unopposed + y[q].oppose + x[u].unopposed + y[u].oppose
	p, q, u = row[t^1], row[t^2], row[t^3]
	return int(d) + int(y[p].unpart+x[p].partner+y[q].unopposed+x[q].oppose+y[u].unopposed+x[u].oppose)
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
	w := &measure.Usual // what C(p,2) and C(o,2) grow or fall by
	d := w[measure.Partners]*p - w[measure.Opponents]*(o-1)
	if by < 0 {
		d = w[measure.Opponents]*o - w[measure.Partners]*(p-1)
	}
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
		b.turnAll(row, s, t)
	case t < seats:
		b.forget(row, s)
		b.forget(row, t)
	default:
		b.forget(row, s)
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
	case t < seats:
		b.enter(row, s)
		b.enter(row, t)
	default:
		b.enter(row, s)
	}
	b.play += d
}

// turnAll counts that the occupants of seats s and t, who are opponents, exchange their partners.
func (b *board) turnAll(row []int32, s, t int) {
	x, y, px, py := row[s], row[t], row[s^1], row[t^1]
	for _, p := range [2][2]int32{{x, px}, {y, py}} {
		b.unpartner(p[0], p[1])
		b.oppose(p[0], p[1])
	}
	for _, p := range [2][2]int32{{x, py}, {y, px}} {
		b.unoppose(p[0], p[1])
		b.partner(p[0], p[1])
	}
}

// forget takes the meetings of the occupant of a seat out of the tallies.
func (b *board) forget(row []int32, s int) {
	i := row[s]
	b.unpartner(i, row[s^1])
	b.unoppose(i, row[s^2])
	b.unoppose(i, row[s^3])
}

// enter counts the meetings of the occupant of a seat.
func (b *board) enter(row []int32, s int) {
	i := row[s]
	b.partner(i, row[s^1])
	b.oppose(i, row[s^2])
	b.oppose(i, row[s^3])
}

func (b *board) partner(i, j int32) {
	at := int(i)*b.n.People + int(j)
	t := b.pair[at]
	b.again += night.One(t.P > 0)
	t.P++
	b.note(at, int(j)*b.n.People+int(i), t)
}

func (b *board) unpartner(i, j int32) {
	at := int(i)*b.n.People + int(j)
	t := b.pair[at]
	t.P--
	b.again -= night.One(t.P > 0)
	b.note(at, int(j)*b.n.People+int(i), t)
}

func (b *board) oppose(i, j int32) {
	at := int(i)*b.n.People + int(j)
	t := b.pair[at]
	b.opposed += int(t.O)
	t.O++
	b.note(at, int(j)*b.n.People+int(i), t)
}

func (b *board) unoppose(i, j int32) {
	at := int(i)*b.n.People + int(j)
	t := b.pair[at]
	t.O--
	b.opposed -= int(t.O)
	b.note(at, int(j)*b.n.People+int(i), t)
}

// note writes down how often a pair met, seen from both sides, and what one meeting more or less costs.
func (b *board) note(at, back int, t night.Tally) {
	b.pair[at], b.pair[back] = t, t
	if t.P < usualP && t.O < usualO && (b.n.Wishes == nil || !b.n.Wishes.Asked[at]) {
		m := &usual[t.P][t.O]
		b.margin[at], b.margin[back] = *m, *m
		return
	}
	m := b.marginAt(at, t)
	b.margin[at], b.margin[back] = m, m
}
