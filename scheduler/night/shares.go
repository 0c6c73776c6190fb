package night

import (
	"math"
	"slices"
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
func FairShares(n *Night, shapes []Shape) *Shares {
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
func SharesOf(n *Night, rounds []Round) *Shares {
	s := &Shares{Owed: make([]float64, n.People)}
	for r, round := range append(append([]Round(nil), n.Problem.History...), rounds...) {
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

// Pools divides the people of round r into those among whom sitting out is shared: everybody, or
// on a mixed night each group, or with set pairs those whose partner is there and those for whom
// there is no game.
func (n *Night) Pools(r int) [][]Player {
	if n.Problem.Format != Mixed && n.Problem.Format != Pairs {
		return [][]Player{n.Here[r]}
	}
	pools := make([][]Player, 2)
	for _, i := range n.Here[r] {
		k := 0
		if n.Problem.Format == Mixed {
			k = n.Side[i]
		} else if !n.HasMate(i, r) {
			k = 1
		}
		pools[k] = append(pools[k], i)
	}
	return pools
}

// SeatsOf is how many of a round's seats belong to the pool with that number.
func (n *Night) SeatsOf(pool, seats int) int {
	switch {
	case n.Problem.Format == Mixed:
		return seats / 2
	case pool == 1:
		return 0
	}
	return seats
}

// Owe gives each of a pool an equal part of the pool's sit-outs.
func Owe(pools [][]Player, out []Player, owed []float64) {
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

func oweEvenly(pool []Player, out int, owed []float64) {
	for _, i := range pool {
		owed[i] += float64(out) / float64(len(pool))
	}
}
