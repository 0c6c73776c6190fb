package measure

import (
	"club/quadrille/scheduler/night"
)

// Pairs is C(k,2), the number of pairs among k things.
func Pairs(k int) int { return k * (k - 1) / 2 }

// PairSums is what the pairs of a night cost, or at least cost: how many times somebody partners again, and
// Σ C(k,2) over how often pairs partnered, opposed and met.
type PairSums struct {
	Repeats, Partners, Opponents, Meetings int
}

// SumPairs is what the pairs of so many people cost, who met so often.
func SumPairs(met []night.Tally, people int) PairSums {
	var b PairSums
	for i := range people {
		for j := range i {
			t := met[i*people+j]
			p, o := int(t.P), int(t.O)
			b.Repeats += max(0, p-1)
			b.Partners += Pairs(p)
			b.Opponents += Pairs(o)
			b.Meetings += Pairs(p + o)
		}
	}
	return b
}

// LeastPairs returns the least possible Σ C(x,2) over n whole numbers x ≥ 0 whose sum is total: by
// convexity they differ by at most one.
func LeastPairs(total, n int) int {
	if n <= 0 || total <= 0 {
		return 0
	}
	q, s := total/n, total%n
	return n*Pairs(q) + q*s
}
