package sitout

import (
	"math"
	"slices"

	"club/quadrille/scheduler/night"
)

// Fair tells how fair numbers of sit-outs are. The fairest have the least sum of squared deviations from what
// everybody owes, then the least difference among those who are there throughout; but nobody is to be without
// any game while somebody with two could give one up.
//
// To sit out once more adds so much to the sum, and each further time adds more. The numbers that a night
// allows are the bases of an integral polymatroid, and on these the least sum of such costs depends on the
// order of what is added alone (Federgruen & Groenevelt, Oper. Res. 34 (1986) 909-918). So a cost is given in
// steps, by its place among all that occur: whole numbers, without rounding.
type Fair struct {
	*Shares
	Least   int     // steps of the fairest numbers, of all people together
	past    []int   // sit-outs in the history
	present []int   // rounds of the night that each person is there for
	steps   [][]int // of each person, by sit-outs beyond those of the history
}

// Fairest works out the steps of a night in which sit-outs are owed by these shares, and changes who sits out
// in the rounds to plan into the fairest that there is. As many of each pool stay on the bench in each round.
// Anybody of a pool may play for anybody else of it: where people are bound to each other or to courts,
// the fairest may be out of reach.
func Fairest(n *night.Night, shares *Shares, out [][]night.Player) *Fair {
	f := &Fair{Shares: shares, past: n.PastOuts(), present: make([]int, n.People)}
	for _, here := range n.Here {
		for _, i := range here {
			f.present[i]++
		}
	}
	var best [][]night.Player
	lean, least := 0, 0
	for _, l := range [...]int{0, -1, 1} { // which of equally good numbers suit those who are there throughout
		f.rank(n, l)
		x := newExchange(n, f, out)
		x.settle()
		spread := x.spread()
		if best == nil || spread < least {
			best, lean, least = x.out(), l, spread
			f.Least = x.steps()
		}
		if least == 0 || f.together() {
			break
		}
	}
	f.rank(n, lean)
	copy(out, best)
	return f
}

// together tells whether all people are there for equally many rounds.
func (f *Fair) together() bool {
	return len(f.present) == 0 || slices.Min(f.present) == slices.Max(f.present)
}

// throughout tells whether somebody is there in all rounds of the night.
func (f *Fair) throughout(n *night.Night, i night.Player) bool { return f.present[i] == len(n.Here) }

// Steps is what so many sit-outs of a person, those of the history included, add to the sum.
func (f *Fair) Steps(i int32, outs int) int {
	steps := f.steps[i]
	return steps[min(max(0, outs-f.past[i]), len(steps)-1)]
}

// added is what one sit-out beyond so many adds to the sum of squared deviations, from -far to far: beyond
// that one order is as good as another.
func (f *Fair) added(i night.Player, outs int) int {
	const far, fineness = 8, 1e6 // sums of shares that differ by rounding alone are equal
	v := max(-far, min(far, 1+2*(float64(outs)-f.Owed[i])))
	return int(math.Round(v * fineness))
}

// rank gives each sit-out its steps. Whoever is there throughout leans to sitting out less (1) or more (-1)
// where the sum would be the same.
func (f *Fair) rank(n *night.Night, lean int) {
	var all []int
	free := make([]int, n.People)
	for _, here := range n.Here[n.First:] {
		for _, i := range here {
			free[i]++
		}
	}
	for i, rounds := range free {
		for k := range rounds {
			all = append(all, f.added(night.Player(i), f.past[i]+k))
		}
	}
	slices.Sort(all)
	all = slices.Compact(all)
	f.steps = make([][]int, n.People)
	for i := range f.steps {
		own := make([]int, free[i]+1)
		for k := range free[i] {
			at, _ := slices.BinarySearch(all, f.added(night.Player(i), f.past[i]+k))
			step := stepsApart*at + 1
			if f.throughout(n, night.Player(i)) {
				step += lean
			}
			if f.past[i]+k+1 == f.present[i] {
				step += stepsApart * len(all) // no game at all
			}
			own[k+1] = own[k] + step
		}
		f.steps[i] = own
	}
}

// stepsApart is how many steps apart different costs are, so that there is room for a lean between them.
const stepsApart = 3

// Deviation is the sum of the squared deviations of these numbers of sit-outs from what is owed.
func (s *Shares) Deviation(outs []int) float64 {
	sum := 0.0
	for i, k := range outs {
		d := float64(k) - s.Owed[i]
		sum += float64(d * d)
	}
	return sum
}
