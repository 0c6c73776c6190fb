package search

import (
	"context"
	"fmt"
	"testing"

	"club/quadrille/scheduler/design"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestStartsFromNearNights: a plan of one round more or fewer is kept in what is made of it, and the plans made from it
// are better than what the search found without (so many repeated meetings above the bound).
func TestStartsFromNearNights(t *testing.T) {
	for _, c := range []struct {
		people, courts, rounds int
		near                   int // rounds of the stored plan
		most                   int // repeated meetings in the end
	}{
		{31, 6, 13, 12, 24}, // 29 without
		{34, 7, 13, 12, 20}, // 27
		{36, 7, 14, 15, 16}, // 19
		{38, 9, 13, 12, 30}, // 35
		{47, 9, 15, 16, 1},  // 2
	} {
		t.Run(fmt.Sprintf("%d/%d/%d", c.people, c.courts, c.rounds), func(t *testing.T) {
			p := nighttest.Club(c.people, c.courts, c.rounds)
			p.Benching = night.StrictBench
			s := newSearch(night.New(&p), defaultMoves)
			plan, ok := design.Wheel(c.people, c.courts, c.near)
			if !ok {
				t.Fatal("no such plan is stored")
			}
			whole, _ := design.CheckWheel(c.people, c.courts, plan)
			for _, b := range s.fromNear(t.Context(), s.draw()) {
				got := b.score()
				if c.near > c.rounds && got[measure.Meetings] > whole {
					t.Errorf("%d meetings repeat, %d in the plan of %d rounds", got[measure.Meetings], whole, c.near)
				}
				if c.near < c.rounds && len(b.shapes) != c.rounds {
					t.Errorf("%d rounds", len(b.shapes))
				}
				if got[measure.Unfair] > 0 && got[measure.Twice] > c.people/4 {
					t.Errorf("sit-outs %v", got)
				}
			}
			if got := newSearch(night.New(&p), defaultMoves).solve(context.Background()).score(); got[measure.Meetings] > c.most || got[measure.Unfair]+got[measure.Twice] > 0 {
				t.Errorf("%d meetings repeat, at most %d wanted; %v", got[measure.Meetings], c.most, got)
			}
		})
	}
}

// TestNearStartsLeaveMovesToSearch: fitting a near plan takes a small part of the moves, however few there are.
func TestNearStartsLeaveMovesToSearch(t *testing.T) {
	for _, moves := range []int{1000, 50_000, defaultMoves} {
		p := nighttest.Club(48, 11, 15)
		s := newSearch(night.New(&p), moves)
		s.fromNear(t.Context(), s.draw())
		if s.moves < moves/2 {
			t.Errorf("of %d moves %d are left", moves, s.moves)
		}
	}
}
