package search

import (
	"context"
	"slices"
	"testing"

	"club/quadrille/scheduler/night"
)

// TestAllIsOneSearchWhereNoDesignFits says on which of the club nights sitting out twice running or even games have their
// price from the start.
func TestAllIsOneSearchWhereNoDesignFits(t *testing.T) {
	whole := map[bool]int{}
	for _, c := range clubNights(t) {
		p := c.problem()
		s := newSearch(night.New(&p), 0)
		mixes := s.mayMix(s.draw())
		priced := mixes && !c.Strict || !mixes && c.Leveling
		if s.mayWhole() != priced {
			t.Errorf("%s: one search %v", c.Name, !priced)
		}
		whole[mixes] += night.One(priced)
	}
	if whole[true] < 3 || whole[false] < 8 {
		t.Errorf("%d nights with a price on the bench in one search, %d others", whole[true], whole[false])
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
