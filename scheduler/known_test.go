package scheduler

import "testing"

// TestPackingNumbers compares with the published sizes of the best codes A(n,6,4).
func TestPackingNumbers(t *testing.T) {
	for k, want := range []int{
		1, 1, 1, 2, 2, 3, 5, 6, 9, 13, 14, 15, 20, 20, 22, 25, 30, 31, 37, 40, 42, 50, 52, 54, 63,
	} {
		if got := packing(k + 4); got != want {
			t.Errorf("%d people: %d games, want %d", k+4, got, want)
		}
	}
}

// TestFivesKnowHalves: of forty people on five courts two halves of twenty alternate, who cannot play
// six rounds each without a repeated meeting.
func TestFivesKnowHalves(t *testing.T) {
	for rounds, want := range map[int]int{10: 0, 11: 1, 12: 2} {
		p := club(40, 5, rounds)
		if got := Certify(p, mustPlan(t, p, Budget{Moves: 20_000})).MeetingEvenness.Bound; got != want {
			t.Errorf("%d rounds: bound %d, want %d", rounds, got, want)
		}
	}
}
