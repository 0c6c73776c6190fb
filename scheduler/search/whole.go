package search

import (
	"context"
	"slices"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// The temperatures of one long run where no design helps, for few people and for many, and how many times the moves it
// gets: elsewhere more than that go into meetings, then into sitting out twice running and then into even games.
const (
	hotWhole, coldWhole         = 6, 2
	hotWholeMany, coldWholeMany = 4.2, 2.5
	wholeShare                  = 1.6
)

// mayWhole tells whether sitting out twice running or even games have a price, and no design fits because people come
// late, leave or have wishes: then all is searched for at once. Where even games have a price and about half sit out, but
// nobody is to do so twice running, the search goes by steps all the same.
func (s *search) mayWhole() bool {
	if !s.n.Free() || s.n.Side != nil || s.mayBeRegular() {
		return false
	}
	if s.mayMix(s.again().draw()) {
		return s.n.Problem.Benching == night.MixedBench
	}
	step, _ := s.n.Problem.Even()
	return step != night.AnyLevels && s.n.Levels() != nil
}

// again is a search that will do the same as this one.
func (s *search) again() *search {
	same := *s
	same.d, same.most = s.d.Clone(), slices.Clone(s.most)
	return &same
}

// whole looks for a plan in one long run from anywhere, in which who sits out, who meets and how even games are have
// their price from the start; where even games have none, they are seen to afterwards. Partner repeats above the bound may
// have been the price of even games: then the plan is compared with one that was made by steps, first without a look at
// levels.
func (s *search) whole(ctx context.Context) *board {
	steps := s.again()
	b := s.draw()
	w, floor := s.weighing(b)
	b = b.under(w)
	step, _ := s.n.Problem.Even()
	if step == night.AnyLevels {
		b.blind()
	}
	bound, resting := b.floor(!b.priced), 0
	if !b.priced {
		resting = bound.Rest(w)
	}
	a := newAnnealer(b, s.d, floor, resting)
	left := int(wholeShare * float64(s.moves))
	if a.best >= brokenWeight {
		left -= a.run(ctx, s.moves/trials, hot, cold)
	}
	if a.best >= brokenWeight {
		left -= a.run(ctx, s.moves/2, hotRepair, hot)
	}
	left -= a.wish(ctx, s.moves/trials)
	left -= a.run(ctx, s.moves/trials, hotShake, hotWhole)
	if s.n.People > fewPeople {
		a.run(ctx, left, hotWholeMany, coldWholeMany)
	} else {
		a.run(ctx, left, hotWhole, coldWhole)
	}
	a.wish(ctx, s.moves/wishShare)
	a.restore()
	if a.best >= brokenWeight || b.score()[measure.Partners] > bound[measure.Partners] {
		if other := steps.even(ctx, steps.meet(ctx)); a.best >= brokenWeight || other.again < b.again || other.again == b.again && other.cost(w) < b.cost(w) {
			return other
		}
	}
	if step == night.AnyLevels {
		return s.even(ctx, b)
	}
	if step == night.EvenLevels && b.leveling.sures > 0 {
		if other := s.priced(ctx, b, hotEven, true); other.leveling.sures < b.leveling.sures {
			return other
		}
	}
	return b
}
