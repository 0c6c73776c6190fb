package search

import (
	"context"
	"slices"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// The temperatures of one long run where no design helps, for few people and for many, and how many times the moves it
// gets: elsewhere more than that go into meetings and then into even games.
const (
	hotWhole, hotWholeMany, coldWhole = 6, 4.5, 2
	wholeShare                        = 1.6
)

// mayWhole tells whether even games have a price, and no design fits because people come late, leave or have wishes. Where
// about half sit out, the search goes by steps all the same: there it finds more.
func (s *search) mayWhole() bool {
	step, _ := s.n.Problem.Even()
	if step == night.AnyLevels || s.n.Levels() == nil || !s.n.Free() || s.n.Side != nil {
		return false
	}
	drawn := s.again().draw()
	return !regular(s.n, drawn) && !s.mayMix(drawn)
}

// again is a search that will do the same as this one.
func (s *search) again() *search {
	same := *s
	same.d, same.most = s.d.Clone(), slices.Clone(s.most)
	return &same
}

// whole looks for a plan in one long run from anywhere, in which who sits out, who meets and how even games are have
// their price from the start. Partner repeats above the bound may have been the price of even games: then the plan is
// compared with one that was made by steps, first without a look at levels.
func (s *search) whole(ctx context.Context) *board {
	steps := s.again()
	b := s.draw()
	strict := b.floor(true)
	a := newAnnealer(b, s.d, strict.Weight(s.w), strict.Rest(s.w))
	left := int(wholeShare * float64(s.moves))
	if a.best >= brokenWeight {
		left -= a.run(ctx, s.moves/trials, hot, cold)
	}
	if a.best >= brokenWeight {
		left -= a.run(ctx, s.moves/2, hotRepair, hot)
	}
	left -= a.wish(ctx, s.moves/trials)
	from := float64(hotWhole)
	if s.n.People > fewPeople {
		from = hotWholeMany
	}
	a.run(ctx, left, from, coldWhole)
	a.wish(ctx, s.moves/wishShare)
	a.restore()
	if a.best >= brokenWeight || b.score()[measure.Partners] > strict[measure.Partners] {
		if other := steps.even(ctx, steps.meet(ctx)); a.best >= brokenWeight || other.again < b.again || other.again == b.again && other.cost(s.w) < b.cost(s.w) {
			return other
		}
	}
	if step, _ := s.n.Problem.Even(); step == night.EvenLevels && b.leveling.sures > 0 {
		if other := s.priced(ctx, b, hotEven, true); other.leveling.sures < b.leveling.sures {
			return other
		}
	}
	return b
}
