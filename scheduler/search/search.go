package search

import (
	"context"
	"slices"

	"club/quadrille/scheduler/bound"
	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/lineup"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/sitout"
)

// search looks for the best plan of a night within a number of moves.
type search struct {
	n     *night.Night
	d     *dice.Dice
	moves int
	w     *measure.Weights
	usual *measure.Weights // where sitting out twice running has a price
	most  []int            // most games of each round to plan
}

// mostCourts is how many courts are open in each round to plan.
func mostCourts(n *night.Night) []int {
	most := make([]int, n.Problem.Rounds)
	for r := range most {
		most[r] = len(n.OpenCourts(n.First + r))
	}
	return most
}

// The temperatures between which plans are annealed, in the units of Score.Weight: a repeated meeting
// is accepted about once in sixty to six hundred times. Hotter wanders, colder sticks.
const hot, cold = 3.5, 2

// hotRepair is the temperature at which boards are shaken on which something asked for stays broken, so
// that sit-outs and repeats do not stand in the way of what must hold. Shaking leaves nothing of a design,
// and so a short search at the usual temperatures comes first: it parts a few people who must not meet.
const hotRepair = 1 << 15

// trials says which part of the moves each start gets, one of so many, before the most promising one
// gets the rest.
const trials = 30

// Nights of so few people are searched hotter: from hotFew to coldFew.
const (
	fewPeople       = 24
	hotFew, coldFew = 8, 2
)

// Where no design fits, boards drawn by lot are all there is: they are shaken from hotShake, so that nothing is left of who
// happened to sit out together, for one of shakeShare of the moves where people are few, and then searched at temperatures
// at which such boards freeze, for few people and for many.
const (
	hotShake            = 64
	shakeShare          = 10
	hotDrawn, coldDrawn = 6, 3.5
	hotMany, coldMany   = 4.2, 3.2
)

// encore is within how many repeated meetings of the floor a plan must be to be worth another run, of
// that share of the moves.
const encore, encoreShare = 4, 0.25

// solve finds a plan in which everything holds that must, and then makes its games even, as far as the night asks.
func (s *search) solve(ctx context.Context) *board {
	if s.mayWhole() {
		return s.whole(ctx)
	}
	return s.even(ctx, s.meet(ctx))
}

// meet finds a plan in which everything holds that must, without a look at levels: people meet as they should.
// Games that cannot be are left out: their courts stay empty, and the round is planned anew without them.
func (s *search) meet(ctx context.Context) *board {
	for {
		b := s.mix(ctx, s.settle(ctx))
		if b.n.Wishes == nil && b.n.Problem.MaxRun == 0 || !s.giveUp(b) {
			return b
		}
		s.moves = max(pulse, s.moves/2)
	}
}

// settle improves anew, from other starts, while more people than must sit out twice running for the sake of a wish,
// where that is to be avoided at any price, on a night on which about half sit out: who is in which half of the hall is hard to mend once it is settled wrongly, and another start seldom is wrong too.
func (s *search) settle(ctx context.Context) *board {
	best := s.improve(ctx)
	if s.n.Wishes == nil || s.n.Problem.Benching == night.MixedBench || !s.mayMix(best) {
		return best
	}
	floor := best.floor(true)
	for k := 0; k < settleTries && best.rest > floor.Rest(s.w) && ctx.Err() == nil; k++ {
		if b := s.improve(ctx); b.cost(s.w) < best.cost(s.w) {
			best = b
		}
	}
	return best
}

// settleTries is how often it does so at most.
const settleTries = 2

// improve starts several boards, tries each for a while and spends what is left on the best.
func (s *search) improve(ctx context.Context) *board {
	starts := s.starts(ctx)
	strict := starts[0].floor(true)
	floor := strict.Weight(s.w)
	left := s.moves
	runs := make([]*annealer, len(starts))
	for k, b := range starts {
		runs[k] = newAnnealer(b, s.d, floor, strict.Rest(s.w))
		if runs[k].best >= brokenWeight {
			left -= runs[k].run(ctx, s.moves/trials, hot, cold)
		}
		if runs[k].best >= brokenWeight {
			left -= runs[k].run(ctx, s.moves/2, hotRepair, hot)
		}
		if len(starts) > 1 && !runs[k].proved() {
			left -= runs[k].run(ctx, s.moves/trials, hot, cold)
		}
		left -= runs[k].wish(ctx, s.moves/trials)
		if runs[k].proved() {
			runs[k].restore()
			return b
		}
	}
	best := slices.MinFunc(runs, func(x, y *annealer) int { return x.best - y.best })
	drawn := runs[len(runs)-1]
	switch few := s.n.People <= fewPeople; {
	case few && len(runs) > 1:
		// what a design leaves is soon exhausted, and a hotter search from anywhere finds more
		left -= drawn.run(ctx, left*5/6, hotFew, coldFew)
		best = slices.MinFunc(runs, func(x, y *annealer) int { return x.best - y.best })
	case few:
		left -= drawn.run(ctx, s.moves/shakeShare, hotShake, hotDrawn)
		left -= drawn.run(ctx, left*5/6, hotDrawn, coldDrawn)
	case len(runs) == 1:
		left -= drawn.run(ctx, left, hotMany, coldMany)
	}
	best.run(ctx, left, hot, cold)
	if best.best < best.floor+encore*best.b.w[measure.Meetings] {
		best.run(ctx, int(encoreShare*float64(s.moves)), hot, cold)
	}
	best.wish(ctx, s.moves/wishShare)
	best.restore()
	return best.b
}

// hotWish is the temperature at which boards are shaken on which people who asked for it are not partners often
// enough, and wishShare the part of the moves that goes into that at last, one of so many.
const hotWish, wishShare = 1 << 8, 4

// wish shakes the best plan if a partnership that was asked for is missing, or if more people than must sit out twice
// running where that is to be avoided. It returns the moves tried.
func (a *annealer) wish(ctx context.Context, moves int) int {
	if least := min(a.b.w[measure.Missing], a.b.w[measure.Twice]); a.b.priced && a.b.n.Wishes == nil || a.best < least {
		return 0
	}
	a.restore()
	restless := !a.b.priced && a.b.rest > a.resting && len(a.m.benchy) > 1
	if s := a.b.score(); s[measure.Missing] == 0 && !restless {
		return 0
	}
	return a.run(ctx, moves, hotWish, hot) + a.run(ctx, moves/2, hot, cold)
}

// starts are the boards from which the search sets out: those made from designs where one fits, and
// one that is drawn by lot.
func (s *search) starts(ctx context.Context) []*board {
	drawn := s.draw().blind()
	return append(s.fromDesigns(ctx, drawn), drawn)
}

// draw fills the rounds one after the other by the queue, and each round's courts by lot.
func (s *search) draw() *board {
	n := s.n
	books := lineup.NewRecord(n)
	var lineups []lineup.Lineup
	var shapes []night.Shape
	var out [][]night.Player
	for r, most := range s.most {
		l := lineup.Draw(n, n.First+r, most, books, s.d)
		books.Enter(n, n.First+r, l.Out)
		lineups = append(lineups, l)
		out = append(out, slices.Clone(l.Out))
		shapes = append(shapes, night.Shape{Courts: l.Courts, Here: len(n.Here[n.First+r])})
	}
	fair := sitout.Fairest(n, sitout.FairShares(n, shapes), out)
	if n.Free() {
		for r := range lineups {
			lineups[r].Relieve(n, out[r])
		}
	}
	return newBoard(n, lineups, fair, s.w, s.d)
}

// giveUp looks for games in which something asked for is broken and lowers the number of games of
// their rounds. It tells whether there were any.
func (s *search) giveUp(b *board) bool {
	any := false
	for r := range b.shapes {
		bad := b.brokenGames(r)
		if bad > 0 {
			s.most[r] = len(b.shapes[r].Courts) - bad
			any = true
		}
	}
	return any
}

// brokenGames counts the games of a round that hold two who must not meet or not partner, or somebody
// who plays too long without a rest.
func (b *board) brokenGames(r int) int {
	bad := 0
	row := b.row(r)
	for g := range b.shapes[r].Courts {
		if b.brokenGame(r, row[4*g:4*g+4]) {
			bad++
		}
	}
	return bad
}

func (b *board) brokenGame(r int, seats []int32) bool {
	for x, i := range seats {
		for y := range x {
			if w := b.n.Wishes; w != nil {
				at := w.At(night.Player(i), night.Player(seats[y]))
				if w.Apart[at] || w.Unteam[at] && x^y == 1 {
					return true
				}
			}
		}
		if k := b.n.Problem.MaxRun; k > 0 && b.runUntil(i, r) > k {
			return true
		}
	}
	return false
}

// runUntil is how many games running, up to planned round r, the person has played.
func (b *board) runUntil(i int32, r int) int {
	total := b.n.Problem.TotalRounds()
	run := 0
	for at := b.n.First + r; at >= 0 && b.state[int(i)*total+at] == playing; at-- {
		run++
	}
	return run
}

// floor is a score that no plan of the board's games can go below, among those that bench as few people twice
// running as can be, or among all.
func (b *board) floor(rests bool) measure.Score {
	games := make([]int, len(b.shapes))
	for r, shape := range b.shapes {
		games[r] = len(shape.Courts)
	}
	s := bound.NewScope(b.n, b.n.Here[b.n.First:], games)
	s.FairGames(b.fair.Shares, b.n.PastOuts())
	s.Rests = rests
	bound := s.Bounds()
	f := measure.Score{measure.Partners: bound.Partners, measure.Meetings: bound.Meetings, measure.Opponents: bound.Opponents}
	for r := range games {
		f[measure.Twice] += s.TwiceAt(r)
	}
	return f
}
