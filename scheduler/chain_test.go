package scheduler

import "testing"

// TestChainsHoldInPlans counts the people whom each two rounds of real plans have in common. Their
// neighbours add up as chains say, and what the overlaps cost is never below the bound.
func TestChainsHoldInPlans(t *testing.T) {
	for _, c := range [][3]int{{7, 1, 6}, {9, 1, 8}, {11, 1, 8}, {13, 2, 8}, {15, 2, 10}, {15, 2, 14}, {17, 2, 16}, {19, 2, 9}, {23, 3, 12}, {26, 3, 9}} {
		p := club(c[0], c[1], c[2])
		rounds := mustPlan(t, p, Budget{Moves: 20_000})
		n := newNight(&p)
		s := n.scopeOf(rounds, measure(n, rounds))
		if !s.steady() {
			t.Fatalf("%v: chains do not apply", c)
		}
		common := s.commonSeats()
		cost := 0
		for r := range rounds {
			for q := range r {
				a := sharedPlayers(rounds[q], rounds[r])
				cost += conv(a, c[1]*c[1])
				if q+1 == r {
					continue
				}
				sum := a + sharedPlayers(rounds[q], rounds[r-1])
				if sum < s.seats(0)-s.twiceAt(1) || sum > s.seats(0)+common[0][1] {
					t.Errorf("%v: round %d has %d people in common with rounds %d and %d", c, q+1, sum, r, r+1)
				}
			}
		}
		if bound := s.chains(common); bound > cost {
			t.Errorf("%v: bound %d, but the overlaps cost %d", c, bound, cost)
		}
	}
}

func sharedPlayers(a, b Round) int {
	var players [2][]Player
	for k, round := range [2]Round{a, b} {
		for _, g := range round.Games {
			players[k] = append(players[k], g.Players()...)
		}
	}
	return len(intersect(players[0], players[1]))
}

// TestChainsBeatPairsOfRounds: fifteen people on two courts cannot both keep to their halves and
// leave them. The plan proves that the bound of ten rounds is the optimum.
func TestChainsBeatPairsOfRounds(t *testing.T) {
	p := club(15, 2, 10)
	wantValue(t, "meetings", Certify(p, mustPlan(t, p, Budget{})).MeetingEvenness, 41)
}
