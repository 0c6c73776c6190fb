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

// UsualMoves is the budget where none is given: fewer moves where each costs more.
func UsualMoves(p *night.Problem) int {
	moves := defaultMoves
	if slices.ContainsFunc(p.People, func(x night.Person) bool { return x.Level != 0 }) {
		moves /= 2
	}
	if len(p.Together)+len(p.NeverMeet)+len(p.NeverPartner) > 0 {
		moves /= 2
	}
	if p.MaxRun > 0 {
		moves /= 4
	}
	return moves
}

// Rounds searches for the best rounds, gives their games courts, and lets those left over play
// singles.
func Rounds(ctx context.Context, p night.Problem, moves int) []night.Round {
	n := night.New(&p)
	s := &search{n: n, moves: moves, d: dice.New(p.Seed, 1), most: mostCourts(n), w: &measure.Strict}
	rounds := s.solve(ctx).rounds()
	orderRounds(n, rounds)
	balanceCourts(n, rounds, s.d)
	if p.LeftoverSingles {
		addSingles(n, rounds)
	}
	balanceHome(n, rounds)
	return rounds
}
