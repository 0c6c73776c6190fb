package scheduler

import (
	"context"

	"club/quadrille/scheduler/lately"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/search"
)

// Change says how much a new plan left of one that people have seen.
type Change struct {
	Games int // games that were shown for the rounds to come
	Kept  int // those of them that are still planned, in the same round, on the same court, in the same teams
}

// Replan makes the rounds that follow the problem's history as [Plan] does, and sets out from the rounds to come
// that were shown before: among equally good plans it takes one with more of the games that people have seen.
// What was shown may name people who are not there any more, as [Nobody] or otherwise, and closed courts.
func Replan(ctx context.Context, p Problem, shown []Round, b Budget) ([]Round, Change, error) {
	if p.Format == Ladder || len(night.Contradictions(&p)) > 0 {
		rounds, err := Plan(ctx, p, b)
		return rounds, Changed(shown, rounds), err
	}
	if err := ctx.Err(); err != nil {
		return nil, Change{}, err
	}
	b = b.of(&p)
	rounds := search.Replan(ctx, p, shown, b.Moves)
	if len(rounds) > 0 && len(rounds[0].Games) == 0 {
		var err error
		if rounds, err = Plan(ctx, p, b); err != nil {
			return nil, Change{}, err
		}
	}
	if len(shown) == 0 {
		rounds = lately.Arrange(night.New(&p), rounds)
	}
	return rounds, Changed(shown, rounds), unpinned(p, rounds)
}

// Changed compares rounds with those that were shown before.
func Changed(shown, rounds []Round) (c Change) {
	for r, round := range shown {
		c.Games += len(round.Games)
		for _, g := range round.Games {
			c.Kept += night.One(r < len(rounds) && rounds[r].Has(g))
		}
	}
	return c
}
