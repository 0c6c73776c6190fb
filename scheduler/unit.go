package scheduler

import (
	"cmp"
	"math"
	"slices"
)

// unit is one person, or two who only play together.
type unit struct {
	a, b Player // b is Nobody for one person
	debt float64
	rest int // rounds since the person last sat out, counting only rounds of the person's night
	run  int // games running without a rest
}

func (u unit) size() int {
	if u.b == Nobody {
		return 1
	}
	return 2
}

// ledger remembers, while rounds are filled one after the other, who sat out when.
type ledger struct {
	outs  []int     // sit-outs so far
	owed  []float64 // fair sit-outs so far
	since []int     // rounds since the last sit-out
	run   []int     // games running without a rest
}

// newLedger opens the books with what was played.
func newLedger(n *night) *ledger {
	l := &ledger{make([]int, n.people), make([]float64, n.people), make([]int, n.people), make([]int, n.people)}
	for r := range n.first {
		l.enter(n, r, n.p.History[r].Out)
	}
	return l
}

// enter books round r of the night: who was there, and who of them sat out.
func (l *ledger) enter(n *night, r int, out []Player) {
	share(n.pools(r), out, l.owed)
	there := make([]bool, len(l.outs))
	for _, i := range n.here[r] {
		there[i] = true
		l.since[i]++
		l.run[i]++
	}
	for _, i := range out {
		if !n.known(i) {
			continue
		}
		l.outs[i]++
		l.since[i], l.run[i] = 0, 0
	}
	for i, yes := range there {
		if !yes {
			l.run[i] = 0
		}
	}
}

// queue returns the people of round r as units in the order in which they should play: first
// those who sat out the round before, then those who sat out most beyond their share, then those
// whose last rest is longest ago. Ties are broken by lot.
func (n *night) queue(r int, l *ledger, d *dice) []unit {
	var units []unit
	for _, i := range n.here[r] {
		u := unit{a: i, b: Nobody, debt: float64(l.outs[i]) - l.owed[i], rest: l.since[i], run: l.run[i]}
		if n.bound(i, r) {
			m := n.mate[i]
			if m < i {
				continue
			}
			u.b = m
			u.debt = max(u.debt, float64(l.outs[m])-l.owed[m])
			u.rest, u.run = min(u.rest, l.since[m]), max(u.run, l.run[m])
		} else if n.p.Format == Pairs {
			continue // no partner is there
		}
		units = append(units, u)
	}
	shuffle(d, units)
	slices.SortStableFunc(units, func(x, y unit) int {
		// since is 0 right after a rest, and also before somebody's first round
		if bx, by := x.rest == 0 && l.outs[x.a] > 0, y.rest == 0 && l.outs[y.a] > 0; bx != by {
			if bx {
				return -1
			}
			return 1
		}
		if c := cmp.Compare(quantum(y.debt), quantum(x.debt)); c != 0 {
			return c
		}
		return cmp.Compare(x.rest, y.rest)
	})
	return units
}

// quantum makes debts that differ by rounding errors alone equal.
func quantum(debt float64) int { return int(math.Round(debt * 1e6)) }
