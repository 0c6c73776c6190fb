package design

import "testing"

func TestEveryWhistTournamentIsOne(t *testing.T) {
	for v := 4; v <= 101; v++ {
		if v%4 > 1 {
			continue
		}
		rounds, ok := Whist(v)
		if !ok {
			t.Errorf("no whist tournament for %d people", v)
			continue
		}
		if err := CheckWhist(v, rounds); err != nil {
			t.Errorf("%d people: %v", v, err)
		}
	}
}
