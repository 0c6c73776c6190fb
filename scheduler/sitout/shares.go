package sitout

import (
	"math"
	"slices"

	"club/quadrille/scheduler/night"
)

// Shares holds what is fair in sitting out. In each round everybody who is there owes an equal share
// of that round's sit-outs, and so somebody who comes late or leaves early owes nothing
// for the rounds missed, and nobody else pays for them. In the end a person should have sat
// out the sum of those shares, rounded down or up. Such a rounding exists for all people at once, because
// the shares are a flow through a network with whole-numbered limits (Ford & Fulkerson, Flows in
// Networks, 1962).
type Shares struct {
	Owed      []float64
	Low, High []int // fewest and most fair sit-outs of each person
}

// FairShares works out the fair shares for rounds of the given shapes; the night's own history counts.
func FairShares(n *night.Night, shapes []night.Shape) *Shares {
	s := &Shares{Owed: make([]float64, n.People)}
	for r := range n.Here {
		if r < n.First {
			Owe(n.Pools(r), n.Problem.History[r].Out, s.Owed)
			continue
		}
		for k, pool := range n.Pools(r) {
			oweEvenly(pool, len(pool)-n.SeatsOf(k, shapes[r-n.First].Seats()), s.Owed)
		}
	}
	return s.Rounded()
}

// SharesOf works out the fair shares of sit-outs of rounds that are known.
func SharesOf(n *night.Night, rounds []night.Round) *Shares {
	s := &Shares{Owed: make([]float64, n.People)}
	for r, round := range append(append([]night.Round(nil), n.Problem.History...), rounds...) {
		Owe(n.Pools(r), round.Out, s.Owed)
	}
	return s.Rounded()
}

// Rounded fixes the fair numbers. Sums within a billionth of a whole number are that number.
func (s *Shares) Rounded() *Shares {
	const close = 1e-9
	for _, owed := range s.Owed {
		s.Low = append(s.Low, int(math.Floor(owed+close)))
		s.High = append(s.High, int(math.Ceil(owed-close)))
	}
	return s
}

// Excess is by how much a number of sit-outs is unfair to the person or to the others.
func (s *Shares) Excess(i int32, outs int) int {
	return max(0, s.Low[i]-outs, outs-s.High[i])
}

// Owe gives each of a pool an equal part of the pool's sit-outs.
func Owe(pools [][]night.Player, out []night.Player, owed []float64) {
	for _, pool := range pools {
		count := 0
		for _, i := range pool {
			if slices.Contains(out, i) {
				count++
			}
		}
		oweEvenly(pool, count, owed)
	}
}

func oweEvenly(pool []night.Player, out int, owed []float64) {
	for _, i := range pool {
		owed[i] += float64(out) / float64(len(pool))
	}
}
