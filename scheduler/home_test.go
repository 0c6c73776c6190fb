package scheduler

import (
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

func TestEverybodyCallsFirstAboutEquallyOften(t *testing.T) {
	p := nighttest.Club(16, 4, 12)
	p.Format = Pairs
	lead := make([]int, 16)
	for _, round := range mustPlan(t, p, Budget{}) {
		for _, g := range round.Games {
			for k := range 2 {
				lead[g.A[k]]++
				lead[g.B[k]]--
			}
		}
	}
	for i, d := range lead {
		if d > 2 || d < -2 {
			t.Errorf("%s is in team A %d times more than in B", p.People[i].Name, d)
		}
	}
}
