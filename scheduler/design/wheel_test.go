package design

import (
	"fmt"
	"testing"
)

// Every stored wheel must be what it claims: the tables filled by different people, no partners twice where
// people have enough of them, sit-outs that differ by one at most, nobody out twice running unless too few
// play, and just as many repeated meetings as noted.
func TestWheels(t *testing.T) {
	for _, w := range wheels {
		t.Run(fmt.Sprintf("%d-%d-%d", w.people, w.tables, w.rounds), func(t *testing.T) {
			plan, ok := Wheel(w.people, w.tables, w.rounds)
			if !ok || len(plan) != w.rounds {
				t.Fatalf("%d rounds, want %d", len(plan), w.rounds)
			}
			if err := checkRounds(w.people, w.tables, plan); err != nil {
				t.Fatal(err)
			}
			c := tally(w.people, plan)
			if err := checkSpread(c.games); err != nil {
				t.Error(err)
			}
			meetings := 0
			for p := range w.people {
				for q := range p {
					partners := c.partners[p*w.people+q]
					m := partners + c.opponents[p*w.people+q]
					meetings += m * (m - 1) / 2
					if partners > 1 {
						t.Errorf("persons %d and %d partner %d times", q, p, partners)
					}
				}
			}
			if meetings != w.meetings {
				t.Errorf("Σ C(m,2) is %d, noted as %d", meetings, w.meetings)
			}
			if twice := benchedTwice(w.people, plan); twice > (w.rounds-1)*max(0, w.people-8*w.tables) {
				t.Errorf("%d times somebody sits out twice running", twice)
			}
		})
	}
	if _, ok := Wheel(5, 1, 200); ok {
		t.Error("a wheel of a night that has none")
	}
}

// benchedTwice counts how often somebody is at no table in two rounds running.
func benchedTwice(people int, plan [][]Table) (count int) {
	last := make([]int, people) // the last round played, from 1
	for r, round := range plan {
		for _, t := range round {
			for _, p := range t {
				last[p] = r + 1
			}
		}
		for p := range people {
			if r > 0 && last[p] < r {
				count++
			}
		}
	}
	return count
}
