package search

import (
	"context"

	"club/quadrille/scheduler/night"
)

// even makes the games of a plan as even as the night asks. First people take each other's places, which costs nothing;
// then games are exchanged such that it costs at most repeated opponents; then, where even games have a price, at that
// price. A plan with more partner repeats is never taken for it.
func (s *search) even(ctx context.Context, plan *board) *board {
	b := plan.under(plan.w)
	if b.leveling = levelingAt(s.n, night.EvenLevels, b.w); b.leveling == nil {
		return plan // where it costs nothing, a sure winner weighs all it can
	}
	b.recount()
	b.relabel(s.d)
	a := newAnnealer(b, s.d, 0, b.rest)
	rest := b.rest // nor is a sit-out traded for a meeting
	a.leads(func(b *board) int {
		if b.rest != rest {
			return noLimit
		}
		return b.dear()
	})
	a.again = b.again
	a.run(ctx, s.moves/freeShare, hotFree, coldFree)
	a.restore()
	b.leveling = newLeveling(s.n, b.w)
	b.recount()
	step, _ := s.n.Problem.Even()
	if step == night.AnyLevels {
		return b
	}
	best := s.priced(ctx, b, hotGentle, false)
	if best.leveling.sures > b.leveling.sures {
		best = b
	}
	if step == night.EvenLevels && best.leveling.sures > 0 {
		if other := s.priced(ctx, b, hotEven, true); other.leveling.sures < best.leveling.sures {
			best = other
		}
	}
	return best
}

// priced makes the games of a copy of a board even at what that is worth, or with as few sure winners as can be found.
func (s *search) priced(ctx context.Context, from *board, hot float64, fewest bool) *board {
	b := from.under(from.w)
	a := newAnnealer(b, s.d, 0, b.rest)
	a.again = b.again
	if fewest {
		a.leads(func(b *board) int { return b.leveling.sures })
	}
	a.run(ctx, s.moves/pricedShare, hot, cold)
	a.restore()
	return b
}

// The temperatures at which games are made even at no cost and at a price, and the parts of the moves, one of so many,
// that go into each. Where a sure winner is left who is to be avoided, the way to an even game leads over worse ones.
const (
	hotFree, coldFree      = 5, 1.5
	hotGentle, hotEven     = 10, 80
	freeShare, pricedShare = 4, 3
)
