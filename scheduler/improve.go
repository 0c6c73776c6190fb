package scheduler

import (
	"context"
	"errors"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/search"
)

// ErrOtherNight is returned for rounds that are not those of the problem.
var ErrOtherNight = errors.New("the rounds do not fit this night: they name others than are here, or courts that are not open")

// Improve looks for rounds that are better than those planned for the same problem, and returns them, or the planned
// ones where it finds none: never worse ones, in the order of importance that [Plan] goes by. What stays of the plan
// stays on its courts. It is deterministic for the problem, the rounds, the budget and the slice.
//
// A long search is done in slices of the usual budget, each with the next number, from what the last returned:
//
//	for slice := uint64(0); ctx.Err() == nil; slice++ {
//		if rounds, found, err = Improve(ctx, p, rounds, Budget{}, slice); err != nil || found { … show, certify … }
//	}
//
// After so many slices without a find, say 12, more of them seldom find anything. Rounds that must not change any more
// belong into the history of the problem. When ctx is done it returns what it has at once. A ladder has nothing to improve.
func Improve(ctx context.Context, p Problem, planned []Round, b Budget, slice uint64) (rounds []Round, found bool, err error) {
	if reasons := night.Contradictions(&p); len(reasons) > 0 {
		return planned, false, &Conflict{Reasons: reasons}
	}
	if p.Format == Ladder || len(planned) == 0 || ctx.Err() != nil {
		return planned, false, nil
	}
	if !search.Fits(&p, planned) {
		return planned, false, ErrOtherNight
	}
	rounds, found = search.Improve(ctx, p, planned, b.of(&p).Moves, slice)
	return rounds, found, nil
}
