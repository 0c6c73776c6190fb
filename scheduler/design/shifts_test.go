package design

import (
	"slices"
	"testing"
)

// TestShiftsFillTheCourts: every game once, nobody twice in a shift, hardly ever a shift more than
// courts and games force, and at any moment nobody more than two games ahead.
func TestShiftsFillTheCourts(t *testing.T) {
	for n := 2; n <= 22; n++ {
		for courts := 1; courts <= n/2; courts++ {
			shifts := Shifts(Berger(n), courts)
			games := n * (n - 1) / 2
			least := (games + courts - 1) / courts
			if len(shifts) > least+1 {
				t.Errorf("%d contestants on %d courts: %d shifts, %d would do", n, courts, len(shifts), least)
			}
			met := map[[2]int]bool{}
			played := make([]int, n)
			for s, shift := range shifts {
				if len(shift) > courts {
					t.Errorf("%d contestants: shift %d has %d games on %d courts", n, s+1, len(shift), courts)
				}
				busy := make([]bool, n)
				for _, g := range shift {
					if busy[g[0]] || busy[g[1]] {
						t.Errorf("%d contestants on %d courts: %v is busy in shift %d", n, courts, g, s+1)
					}
					busy[g[0]], busy[g[1]] = true, true
					met[[2]int{min(g[0], g[1]), max(g[0], g[1])}] = true
					played[g[0]]++
					played[g[1]]++
				}
				if lead := slices.Max(played) - slices.Min(played); lead > 2 {
					t.Errorf("%d contestants on %d courts: after shift %d somebody is %d games ahead", n, courts, s+1, lead)
				}
			}
			if len(met) != games {
				t.Errorf("%d contestants on %d courts: %d pairs met, not %d", n, courts, len(met), games)
			}
		}
	}
	if got := Shifts(Berger(4), 0); got != nil {
		t.Errorf("no courts give %d shifts", len(got))
	}
}
