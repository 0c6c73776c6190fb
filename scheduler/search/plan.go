package search

import (
	"context"
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// defaultMoves keeps the plan of a club's night below a sixth of a second on one core.
const defaultMoves = 2_000_000

// UsualMoves is the budget where none is given: fewer moves where each costs more, or where more is tried with them, and
// more where a plan takes less.
func UsualMoves(p *night.Problem) int {
	moves := defaultMoves
	wishes := len(p.Together)+len(p.NeverMeet)+len(p.NeverPartner) > 0
	switch s := newSearch(night.New(p), 0); {
	case s.mayWhole():
		moves = moves * 9 / 10
	case wishes && !s.n.Free():
		moves /= 2
	case wishes && s.mayMix(s.draw()):
		// who is in which half of the hall may be settled anew
	case !s.mayBeRegular() && s.n.Levels() == nil:
		moves = moves * 8 / 5
	case !s.mayBeRegular():
		moves = moves * 5 / 4
	}
	if p.MaxRun > 0 {
		moves /= 4
	}
	return moves
}

// Rounds searches for the best rounds, gives their games courts, and lets those left over play
// singles.
func Rounds(ctx context.Context, p night.Problem, moves int) []night.Round {
	s := newSearch(night.New(&p), moves)
	return s.pinned(ctx, s.finish(s.solve(ctx), nil), nil)
}

func newSearch(n *night.Night, moves int) *search {
	return &search{n: n, moves: moves, d: dice.New(n.Problem.Seed, 1), most: mostCourts(n), w: &measure.Strict, usual: priced(n.Problem)}
}

// priced are the usual weights, with what the problem says that sitting out twice running weighs.
func priced(p *night.Problem) *measure.Weights {
	w := measure.Usual
	if p.TwicePrice > 0 {
		w[measure.Twice] = p.TwicePrice * w[measure.Meetings] / 2
	}
	return &w
}

// finish gives the games of a plan courts, and lets those left over play singles. Of what was shown to people as
// much stays as is the same, and all that is held.
func (s *search) finish(b *board, shown []night.Round) []night.Round {
	if !keepsAny(b.rounds(), shown) {
		shown = nil
	}
	n, rounds := s.n, b.rounds()
	if shown == nil && b.held == nil {
		orderRounds(n, rounds)
	}
	balanceCourts(n, rounds, withPinned(n, shown), s.d)
	if n.Problem.LeftoverSingles {
		addSingles(n, rounds)
	}
	balanceHome(n, rounds)
	return rounds
}

// keepsAny tells whether any of the games that were shown is still planned.
func keepsAny(rounds, shown []night.Round) bool {
	for r := range min(len(rounds), len(shown)) {
		if slices.ContainsFunc(rounds[r].Games, shown[r].Has) {
			return true
		}
	}
	return false
}
