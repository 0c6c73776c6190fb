package main

import (
	"math/rand/v2"

	"club/quadrille/scheduler/design"
)

// wheel is a plan in the making that turns into itself. Only its base rounds are searched: they have far
// fewer arrangements than all rounds together, and as few repeats make them good.
type wheel struct {
	*rim
	rows     [][]int // of each base round: who sits at the tables, four by four, and then who sits out
	met      []int   // of each orbit: partners·width + meetings in base rounds
	bench    bench
	play     int // weight of who meets whom, in all rounds of the wheel
	meetings int // Σ C(m,2) over the pairs, who meet m times in all rounds of the wheel
	last     struct{ base, s, t int }
	kept     bool // the last move was not taken back
	best     *bestWheel
}

// newWheel seats everybody at random.
func newWheel(r *rim, soft softness, best *bestWheel, rng *rand.Rand) *wheel {
	w := &wheel{rim: r, met: make([]int, len(r.orbits)), bench: newBench(r, soft), best: best, kept: true}
	for b := range r.bases {
		row := rng.Perm(r.people)
		w.rows = append(w.rows, row)
		for s := 0; s < r.seats(); s += 4 {
			w.countTable(row, s, 1)
		}
		for _, p := range row[r.seats():] {
			w.bench.change(b, p)
		}
	}
	return w
}

// meet lets a pair meet once more in base rounds (by 1) or once less (by -1); as partners too, that is by
// ±(1 + width).
func (w *wheel) meet(p, q, by int) {
	o := w.orbitOf[p][q]
	tolls := w.orbits[o].tolls
	before := &tolls[w.met[o]]
	w.met[o] += by
	after := &tolls[w.met[o]]
	w.play += int(after.weight - before.weight)
	w.meetings += int(after.meetings - before.meetings)
}

// oftenMet is how often a pair meets in all rounds of the wheel.
func (w *wheel) oftenMet(p, q int) int {
	o := w.orbitOf[p][q]
	return w.met[o] % w.width * w.orbits[o].times
}

// countTable adds (sign 1) or takes away (-1) the pairs of the table of a seat.
func (w *wheel) countTable(row []int, seat, sign int) {
	t := row[seat&^3:][:4]
	w.meet(t[0], t[1], sign*(1+w.width))
	w.meet(t[2], t[3], sign*(1+w.width))
	w.meet(t[0], t[2], sign)
	w.meet(t[0], t[3], sign)
	w.meet(t[1], t[2], sign)
	w.meet(t[1], t[3], sign)
}

// countSeat adds or takes away the pairs of one seat only.
func (w *wheel) countSeat(row []int, seat, sign int) {
	w.meet(row[seat], row[seat^1], sign*(1+w.width))
	w.meet(row[seat], row[seat^2], sign)
	w.meet(row[seat], row[seat^3], sign)
}

// swap lets the occupants of two seats of a base round change places. The first must be at a table and no
// partner of the second. Done twice it changes nothing.
func (w *wheel) swap(base, s, t int) {
	row := w.rows[base]
	switch {
	case s/4 == t/4:
		w.countTable(row, s, -1)
		row[s], row[t] = row[t], row[s]
		w.countTable(row, s, 1)
	case t < w.seats():
		w.countSeat(row, s, -1)
		w.countSeat(row, t, -1)
		row[s], row[t] = row[t], row[s]
		w.countSeat(row, s, 1)
		w.countSeat(row, t, 1)
	default:
		w.countSeat(row, s, -1)
		w.bench.change(base, row[s])
		w.bench.change(base, row[t])
		row[s], row[t] = row[t], row[s]
		w.countSeat(row, s, 1)
	}
}

// price is 0 as soon as a good enough plan has been seen: the search then ends.
func (w *wheel) price() int {
	if w.best.enough() {
		return 0
	}
	return w.play + w.bench.price
}

// shake swaps two random people of a base round, partners excepted, whose swap would change nothing. It
// has a look first at what the last move led to.
func (w *wheel) shake(rng *rand.Rand) {
	w.look()
	s, t := 0, 1
	for s/2 == t/2 {
		s, t = rng.IntN(w.seats()), rng.IntN(w.people)
	}
	w.last.base, w.last.s, w.last.t = rng.IntN(w.bases), s, t
	w.swap(w.last.base, s, t)
	w.kept = true
}

// back undoes the last move.
func (w *wheel) back() {
	w.swap(w.last.base, w.last.s, w.last.t)
	w.kept = false
}

// look shows the plan to the best so far if it may be better.
func (w *wheel) look() {
	if w.kept && w.bench.price <= w.bench.allowed && w.meetings-w.leftOver() < w.best.meetings() {
		w.best.offer(w.starter())
	}
}

// leftOver is how many fewer meetings repeat in the rounds to be played than in all of the wheel. Two who
// meet in both of two rounds left over count for a little too much.
func (w *wheel) leftOver() (meetings int) {
	for r := w.rounds; r < w.order*w.bases; r++ {
		row := w.rows[r%w.bases]
		for seat := range w.seats() {
			for other := seat &^ 3; other < seat; other++ {
				meetings += w.oftenMet(row[seat], row[other]) - 1
			}
		}
	}
	return meetings
}

// starter returns the base rounds as the catalogue has them.
func (w *wheel) starter() design.WheelStarter {
	s := design.WheelStarter{People: w.people, Tables: w.tables, Rounds: w.rounds, Order: w.order, Circles: w.circles}
	for len(s.Circles) > 0 && s.Circles[len(s.Circles)-1] == 1 {
		s.Circles = s.Circles[:len(s.Circles)-1]
	}
	for _, row := range w.rows {
		var base []design.Table
		for seat := 0; seat < w.seats(); seat += 4 {
			base = append(base, design.Table(row[seat:seat+4]))
		}
		s.Bases = append(s.Bases, base)
	}
	return s
}
