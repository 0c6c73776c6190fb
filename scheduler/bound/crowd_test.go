package bound

import (
	"testing"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestCrowdedIsConvexity: one crowd alone gives what spreading its meetings evenly over its pairs gives.
func TestCrowdedIsConvexity(t *testing.T) {
	for people := 2; people < 9; people++ {
		for meetings := range 120 {
			got := crowded([]crowd{{people: people, meetings: meetings}}, func(c crowd) int { return c.meetings })
			if want := measure.LeastPairs(meetings, measure.Pairs(people)); got != want {
				t.Errorf("%d people who meet %d times cost %d, want %d", people, meetings, got, want)
			}
		}
	}
}

// TestCrowdsAreThere looks for each crowd in real plans: the people who play in all rounds of the run
// are no fewer than it says, those who play in any no more, and no fewer of them meet and oppose.
func TestCrowdsAreThere(t *testing.T) {
	for _, c := range [][3]int{{7, 1, 9}, {9, 1, 9}, {13, 2, 8}, {15, 2, 11}, {17, 2, 11}, {23, 3, 12}, {25, 3, 12}, {31, 4, 9}, {40, 8, 7}} {
		p := nighttest.Club(c[0], c[1], c[2])
		rounds := drawn(&p)
		n := night.New(&p)
		s := ScopeOf(n, rounds, measure.Count(n, rounds))
		if !s.Rests {
			t.Fatalf("%v: more people than need be are benched twice running", c)
		}
		for first := range 2 {
			var phase []int
			for r := first; r < len(rounds); r += 2 {
				phase = append(phase, r)
			}
			crowds := s.crowds(phase, s.commonSeats())
			for a := range phase {
				for b := a; b < len(phase); b++ {
					all, any := playersOfRun(rounds, phase[a:b+1])
					core, fringe := crowds[0], crowds[1]
					crowds = crowds[2:]
					if len(all) < core.people || len(any) > fringe.people {
						t.Fatalf("%v, run %v: %d play in all rounds, %d in any; the crowds are %+v and %+v", c, phase[a:b+1], len(all), len(any), core, fringe)
					}
					wantCrowd(t, rounds, phase, all[:core.people], core)
					wantCrowd(t, rounds, phase, any, fringe)
				}
			}
		}
	}
}

// playersOfRun returns who plays in all of some rounds and who in any.
func playersOfRun(rounds []night.Round, run []int) (all, any []night.Player) {
	times := make(map[night.Player]int)
	for _, r := range run {
		for _, g := range rounds[r].Games {
			for _, i := range g.Players() {
				if times[i]++; times[i] == 1 {
					any = append(any, i)
				}
			}
		}
	}
	for _, i := range any {
		if times[i] == len(run) {
			all = append(all, i)
		}
	}
	return all, any
}

// wantCrowd counts the meetings among people in the rounds of a phase.
func wantCrowd(t *testing.T, rounds []night.Round, phase []int, people []night.Player, want crowd) {
	t.Helper()
	in := make(map[night.Player]bool)
	for _, i := range people {
		in[i] = true
	}
	meetings, opponents := 0, 0
	for _, r := range phase {
		for _, g := range rounds[r].Games {
			team := func(m night.Team) (count int) {
				for _, i := range m {
					if in[i] {
						count++
					}
				}
				return count
			}
			a, b := team(g.A), team(g.B)
			meetings += measure.Pairs(a + b)
			opponents += a * b
		}
	}
	if meetings < want.meetings || opponents < want.opponents {
		t.Errorf("%d people meet %d times and oppose %d times, less than %+v", len(people), meetings, opponents, want)
	}
}
