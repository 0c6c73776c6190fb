package scheduler

import (
	"context"
	"slices"

	"club/quadrille/scheduler/night"
)

// Idle is a round in which open courts had no game.
type Idle struct {
	Round  int     // of the night, from 0
	Courts []Court // open and without a game, in ascending order
	More   int     // further games that the people there could have played; 0 when there were too few
}

// IdleCourts finds the open courts without a game in the rounds that follow the problem's history, and how
// many more games there could have been. A certificate compares rotations with as many games only, so that
// "no rotation can be fairer" is half the truth where more games were possible. More is never too high: a
// round with so many games was found, within everything that is asked. Where people ask much of each other
// it may be too low. The rounds must pass [Audit].
func IdleCourts(p Problem, rounds []Round) []Idle {
	var found []Idle
	for r, round := range rounds {
		q := p
		q.History = slices.Concat(p.History, rounds[:r])
		q.Rounds = 1
		n := night.New(&q)
		open := n.OpenCourts(n.First)
		idle := Idle{Round: n.First, Courts: slices.DeleteFunc(slices.Clone(open), round.Uses)}
		if len(idle.Courts) == 0 {
			continue
		}
		if n.MostGames(n.First, len(open)) > len(round.Games) {
			idle.More = max(0, gamesOfOne(q)-len(round.Games))
		}
		found = append(found, idle)
	}
	return found
}

// gamesOfOne is how many doubles games a plan of the problem's one round has. Who should be partners some
// day says nothing of this round, and a ladder fills courts as any night does.
func gamesOfOne(p Problem) int {
	if p.Format == Ladder {
		p.Format = Rotating
	}
	p.LeftoverSingles = false
	p.Together = slices.DeleteFunc(slices.Clone(p.Together), func(t Pair) bool { return t.Times > 0 })
	rounds, err := Plan(context.Background(), p, Budget{Moves: 1})
	if err != nil || len(rounds) == 0 {
		return 0
	}
	return len(rounds[0].Games)
}
