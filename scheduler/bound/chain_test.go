package bound

import (
	"testing"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestChainsHoldInPlans counts the people whom each two rounds of real plans have in common. Their
// neighbours add up as chains say, and what the overlaps cost is never below the bound.
func TestChainsHoldInPlans(t *testing.T) {
	for _, c := range [][3]int{{7, 1, 6}, {9, 1, 8}, {11, 1, 8}, {13, 2, 8}, {15, 2, 10}, {15, 2, 14}, {17, 2, 16}, {19, 2, 9}, {23, 3, 12}, {26, 3, 9}} {
		p := nighttest.Club(c[0], c[1], c[2])
		rounds := drawn(&p)
		n := night.New(&p)
		s := ScopeOf(n, rounds, measure.Count(n, rounds))
		if !s.steady() {
			t.Fatalf("%v: chains do not apply", c)
		}
		common := s.commonSeats()
		cost := 0
		for r := range rounds {
			for q := range r {
				a := sharedPlayers(rounds[q], rounds[r])
				cost += measure.LeastPairs(a, c[1]*c[1])
				if q+1 == r {
					continue
				}
				sum := a + sharedPlayers(rounds[q], rounds[r-1])
				if sum < s.seats(0)-s.TwiceAt(1) || sum > s.seats(0)+common[0][1] {
					t.Errorf("%v: round %d has %d people in common with rounds %d and %d", c, q+1, sum, r, r+1)
				}
			}
		}
		if bound := s.chains(common); bound > cost {
			t.Errorf("%v: bound %d, but the overlaps cost %d", c, bound, cost)
		}
	}
}

func sharedPlayers(a, b night.Round) int {
	var players [2][]night.Player
	for k, round := range [2]night.Round{a, b} {
		for _, g := range round.Games {
			players[k] = append(players[k], g.Players()...)
		}
	}
	return len(night.Intersect(players[0], players[1]))
}
