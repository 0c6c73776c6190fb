package search

import (
	"context"
	"slices"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// mix looks for a plan in which a few people sit out twice running and others meet the more for it, and returns
// it if that is worth the price, else the strict plan. Where nobody may sit out twice running and about half of the
// people sit out each round, two closed groups all but alternate, who hardly meet.
func (s *search) mix(ctx context.Context, strict *board) *board {
	if s.n.Problem.Benching != night.MixedBench || !s.mayMix(strict) {
		return strict
	}
	w := mixed(s.usual, strict.shapes)
	free, least := strict.floor(false), strict.floor(true)
	floor := min(free.Weight(w)+w[measure.Twice], least.Weight(w))
	if strict.cost(w) <= floor {
		return strict
	}
	s.w = w
	defer func() { s.w = &measure.Strict }()
	var runs []*annealer
	drawn := s.draw().blind()
	starts := []*board{strict.under(w), drawn}
	if regular(s.n, drawn) && s.n.Side == nil {
		if b := fromSplit(s.n, drawn, s.d); b != nil {
			starts = append(starts, b)
		}
	}
	for k, b := range starts {
		hot := hotMix
		if k == 2 {
			hot = hotSplit
		}
		a := newAnnealer(b, s.d, floor, 0)
		a.run(ctx, s.moves/mixShare, hot, cold)
		runs = append(runs, a)
	}
	best := slices.MinFunc(runs, func(x, y *annealer) int { return x.best - y.best })
	best.run(ctx, s.moves/mixShare, hot, cold)
	best.restore()
	if best.b.traded(w) >= strict.traded(w) {
		return strict
	}
	return best.b
}

// weighing returns the weights by which plans of a board's shape are compared, and what none of them weighs less than.
func (s *search) weighing(b *board) (w *measure.Weights, floor int) {
	w = s.w
	strict, free := b.floor(true), b.floor(false)
	if s.n.Problem.Benching == night.MixedBench && s.mayMix(b) {
		w = mixed(s.usual, b.shapes)
		return w, min(strict.Weight(w), free.Weight(w)+w[measure.Twice])
	}
	return w, strict.Weight(w)
}

// mixed are the weights under which twice running has a price. Where more people sit out than play, some
// must do so thrice running sooner or later.
func mixed(usual *measure.Weights, shapes []night.Shape) *measure.Weights {
	w := *usual
	for _, shape := range shapes {
		if shape.Out() > shape.Seats() {
			w[measure.Thrice] = 0
		}
	}
	return &w
}

// hotMix is the temperature at which plans are shaken in which people may sit out twice running, and mixShare
// the part of the moves, one of so many, that each of three runs gets.
const hotMix, hotSplit, mixShare = 8.0, 3.5, 4

// MayMix tells whether so many sit out in a round that to sit out twice running once can buy anything.
func MayMix(p *night.Problem) bool {
	s := newSearch(night.New(p), 0)
	return s.mayMix(s.draw())
}

// mayMix tells whether so many sit out that to sit out twice running once can buy anything.
func (s *search) mayMix(b *board) bool {
	for _, shape := range b.shapes {
		if over := shape.Here - 2*shape.Seats(); shape.Seats() > 0 && over >= -mixWithin && over <= mixWithin {
			return true
		}
	}
	return false
}

// mixWithin is by how many people twice the seats may be missed. With fewer people nothing keeps them from
// mixing, with more they must sit out twice running anyway.
const mixWithin = 3

// under is a copy of the board under other weights.
func (b *board) under(w *measure.Weights) *board {
	c := *b
	c.w, c.priced = w, w[measure.TwiceMore] > 0
	c.seat, c.where = slices.Clone(b.seat), slices.Clone(b.where)
	c.recount()
	return &c
}

// traded is the weight of what mixing trades, and of what is more important.
func (b *board) traded(under *measure.Weights) int {
	w := *under
	w[measure.TwiceMore], w[measure.TwiceAtOnce], w[measure.Opponents] = 0, 0, 0
	return b.cost(&w) - b.leveled()
}

// cost is the board's weight under other weights.
func (b *board) cost(w *measure.Weights) int {
	s := b.score()
	return s.Weight(w) + b.leveled()
}
