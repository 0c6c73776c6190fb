package scheduler

import (
	"math"
	"slices"
)

// shares holds what is fair in sitting out. In each round everybody who is there owes an equal share
// of that round's sit-outs, and so somebody who comes late or leaves early owes nothing
// for the rounds missed, and nobody else pays for them. In the end a person should have sat
// out the sum of those shares, rounded down or up. Such a rounding exists for all people at once, because
// the shares are a flow through a network with whole-numbered limits (Ford & Fulkerson, Flows in
// Networks, 1962).
type shares struct {
	owed      []float64
	low, high []int // fewest and most fair sit-outs of each person
}

// newShares works out the fair shares for rounds of the given shapes; the night's own history counts.
func newShares(n *night, shapes []shape) *shares {
	s := &shares{owed: make([]float64, n.people)}
	for r := range n.here {
		if r < n.first {
			share(n.pools(r), n.p.History[r].Out, s.owed)
			continue
		}
		for k, pool := range n.pools(r) {
			oweEvenly(pool, len(pool)-n.seatsOf(k, shapes[r-n.first].seats()), s.owed)
		}
	}
	return s.rounded()
}

// sharesOf works out the fair shares of sit-outs of rounds that are known.
func sharesOf(n *night, rounds []Round) *shares {
	s := &shares{owed: make([]float64, n.people)}
	for r, round := range append(append([]Round(nil), n.p.History...), rounds...) {
		share(n.pools(r), round.Out, s.owed)
	}
	return s.rounded()
}

// rounded fixes the fair numbers. Sums within a billionth of a whole number are that number.
func (s *shares) rounded() *shares {
	const close = 1e-9
	for _, owed := range s.owed {
		s.low = append(s.low, int(math.Floor(owed+close)))
		s.high = append(s.high, int(math.Ceil(owed-close)))
	}
	return s
}

// excess is by how much a number of sit-outs is unfair to the person or to the others.
func (s *shares) excess(i int32, outs int) int {
	return max(0, s.low[i]-outs, outs-s.high[i])
}

// pools divides the people of round r into those among whom sitting out is shared: everybody, or
// on a mixed night each group, or with set pairs those whose partner is there and those for whom
// there is no game.
func (n *night) pools(r int) [][]Player {
	if n.p.Format != Mixed && n.p.Format != Pairs {
		return [][]Player{n.here[r]}
	}
	pools := make([][]Player, 2)
	for _, i := range n.here[r] {
		k := 0
		if n.p.Format == Mixed {
			k = n.side[i]
		} else if !n.bound(i, r) {
			k = 1
		}
		pools[k] = append(pools[k], i)
	}
	return pools
}

// seatsOf is how many of a round's seats belong to the pool with that number.
func (n *night) seatsOf(pool, seats int) int {
	switch {
	case n.p.Format == Mixed:
		return seats / 2
	case pool == 1:
		return 0
	}
	return seats
}

// share gives each of a pool an equal part of the pool's sit-outs.
func share(pools [][]Player, out []Player, owed []float64) {
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
