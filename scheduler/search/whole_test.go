package search

import (
	"context"
	"slices"
	"testing"

	"club/quadrille/scheduler/night"
)

// TestLevelsArePartOfOneSearchWhereNoDesignFits says on which of the club nights even games have their price from the start.
func TestLevelsArePartOfOneSearchWhereNoDesignFits(t *testing.T) {
	whole := 0
	for _, c := range clubNights(t) {
		p := c.problem()
		s := newSearch(night.New(&p), 0)
		if !s.mayWhole() {
			continue
		}
		whole++
		if p.Leveling == night.AnyLevels || s.mayMix(s.draw()) {
			t.Errorf("%s: one run", c.Name)
		}
	}
	if whole < 8 {
		t.Errorf("%d nights in one run", whole)
	}
}

// TestASearchAgainFindsTheSame runs a search twice: asking what it would find leaves it as it was.
func TestASearchAgainFindsTheSame(t *testing.T) {
	p := clubNights(t)[5].problem()
	s := newSearch(night.New(&p), 20_000)
	first := s.again().solve(context.Background())
	if second := s.solve(context.Background()); !slices.Equal(first.seat, second.seat) {
		t.Error("two plans")
	}
}
