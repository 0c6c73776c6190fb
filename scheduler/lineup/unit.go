package lineup

import (
	"cmp"
	"math"
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// Unit is one person, or two who only play together.
type Unit struct {
	A, B night.Player // b is Nobody for one person
	debt float64
	rest int // rounds since the person last sat out, counting only rounds of the person's night
	run  int // games running without a rest
}

// Size is how many people the unit is.
func (u Unit) Size() int {
	if u.B == night.Nobody {
		return 1
	}
	return 2
}

// queue returns the people of round r as units in the order in which they should play: first
// those who sat out the round before, then those who sat out most beyond their share, then those
// whose last rest is the latest, so that whoever played longest without a rest sits out. Ties are broken by lot.
func queue(n *night.Night, r int, l *Record, d *dice.Dice) []Unit {
	var units []Unit
	for _, i := range n.Here[r] {
		u := Unit{A: i, B: night.Nobody, debt: float64(l.outs[i]) - l.Owed[i], rest: l.since[i], run: l.Run[i]}
		if n.HasMate(i, r) {
			m := n.Mate[i]
			if m < i {
				continue
			}
			u.B = m
			u.debt = max(u.debt, float64(l.outs[m])-l.Owed[m])
			u.rest, u.run = min(u.rest, l.since[m]), max(u.run, l.Run[m])
		} else if n.Problem.Format == night.Pairs {
			continue // no partner is there
		}
		units = append(units, u)
	}
	dice.Shuffle(d, units)
	slices.SortStableFunc(units, func(x, y Unit) int {
		// since is 0 right after a rest, and also before somebody's first round
		if bx, by := x.rest == 0 && l.outs[x.A] > 0, y.rest == 0 && l.outs[y.A] > 0; bx != by {
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
