package search

import (
	"context"
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/sitout"
)

// Improve looks for a better plan than one of the same night, in so many moves, and tells whether it found one. It is
// deterministic for the problem, the plan, the moves and the slice; each slice searches elsewhere: most set out from the
// plan, the hotter the farther, and every fourth from nothing. The plan must fit the problem: see [Fits].
func Improve(ctx context.Context, p night.Problem, plan []night.Round, moves int, slice uint64) (better []night.Round, found bool) {
	n := night.New(&p)
	s := newSearch(n, moves)
	s.d = dice.New(p.Seed, firstSlice+slice)
	b := s.boardOf(plan)
	w, floor := s.weighing(b)
	if len(p.Pins) > 0 {
		b.holding()
		for _, pin := range p.Pins {
			if !pin.KeptIn(plan[pin.Round-n.First]) {
				return plan, false // this plan was made without the pin, and is no measure for others
			}
			b.hold(pin)
		}
	}
	b = b.under(w)
	if b.cost(w) <= floor {
		return plan, false
	}
	other := b
	if heat := slice % uint64(len(sliceHeat)+1); heat < uint64(len(sliceHeat)) || b.held != nil {
		other = b.under(w)
		a := newAnnealer(other, s.d, floor, 0)
		a.still = heat == 0
		from := sliceHeat[heat%uint64(len(sliceHeat))]
		a.run(ctx, moves, from, min(cold, from))
		a.restore()
	} else {
		other = s.solve(ctx)
	}
	if !slices.Equal(games(other.shapes), games(b.shapes)) || other.cost(w) >= b.cost(w) || other.paysWithPartners(b) {
		return plan, false
	}
	return s.finish(other, plan), true
}

// firstSlice is the stream of chance of the first slice; smaller ones are for plans from nothing.
const firstSlice = 16

// sliceHeat are the temperatures at which slices set out from the plan. The first keeps most of its games.
var sliceHeat = [...]float64{1, hot, 6}

// games lists how many games each round has.
func games(shapes []night.Shape) []int {
	count := make([]int, len(shapes))
	for r, shape := range shapes {
		count[r] = len(shape.Courts)
	}
	return count
}

// Fits tells whether a plan is one of the problem's rounds: their number, who is there, and the open courts.
func Fits(p *night.Problem, plan []night.Round) bool {
	n := night.New(p)
	if len(plan) != p.Rounds {
		return false
	}
	for r, round := range plan {
		here := slices.Clone(round.Named())
		slices.Sort(here)
		if !slices.Equal(here, n.Here[n.First+r]) {
			return false
		}
		var used []night.Court
		for _, g := range round.Games {
			if slices.Contains(used, g.Court) || !slices.Contains(n.OpenCourts(n.First+r), g.Court) || len(g.Players()) == 3 {
				return false
			}
			used = append(used, g.Court)
		}
	}
	return true
}

// boardOf seats a plan that fits as it is.
func (s *search) boardOf(plan []night.Round) *board {
	n := s.n
	shapes := make([]night.Shape, len(plan))
	rows := make([][]int32, len(plan))
	out := make([][]night.Player, len(plan))
	for r, round := range plan {
		var bench []night.Player
		for _, g := range round.Games {
			if g.Singles() {
				bench = append(bench, g.A[0], g.B[0])
				continue
			}
			shapes[r].Courts = append(shapes[r].Courts, g.Court)
			for _, t := range [2]night.Team{g.A, g.B} {
				if n.Side != nil && n.Side[t[0]] == 1 {
					t[0], t[1] = t[1], t[0]
				}
				rows[r] = append(rows[r], int32(t[0]), int32(t[1]))
			}
		}
		out[r] = append(bench, round.Out...)
		for _, i := range out[r] {
			rows[r] = append(rows[r], int32(i))
		}
		shapes[r].Here = len(rows[r])
		s.most[r] = len(shapes[r].Courts)
	}
	fair := sitout.Fairest(n, sitout.FairShares(n, shapes), out)
	b := emptyBoard(n, shapes, fair, s.w)
	for r, row := range rows {
		copy(b.row(r), row)
	}
	b.recount()
	return b
}
