package scheduler

import (
	"context"
	"slices"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/search"
)

// Alternative is a plan among others that trade sitting out twice running, see [Alternatives], or even games, see
// [LevelAlternatives], against meeting everybody.
type Alternative struct {
	Benching    Benching
	Price       int      // repeated meetings for two sit-outs twice running, where these have a price
	Leveling    Leveling // how much even games were worth
	Rounds      []Round
	Certificate Certificate
}

// Once is how many people sit out twice running.
func (a Alternative) Once(people int) int {
	last, twice := make([]int, people), make([]bool, people)
	for r, round := range a.Rounds {
		for _, i := range round.Out {
			if int(i) < people && i >= 0 {
				twice[i] = twice[i] || r > 0 && last[i] == r
				last[i] = r + 1
			}
		}
	}
	count := 0
	for _, yes := range twice {
		count += night.One(yes)
	}
	return count
}

// prices of [Alternatives]: the usual one, and one at which only the best bargains are taken.
var prices = []int{3, 12}

// Choosable tells whether so many sit out that the choice of [Alternatives] may matter.
func Choosable(p Problem) bool {
	return p.Format != Ladder && len(night.Contradictions(&p)) == 0 && search.MayMix(&p)
}

// Alternatives makes up to three plans where the choice between them matters, those with fewest sit-outs twice running
// first: one that avoids them at any price, and such as trade them for meetings. Where nothing is to be gained it
// returns the one plan that [Plan] makes. The last is what [Plan] makes by itself.
func Alternatives(ctx context.Context, p Problem, b Budget) ([]Alternative, error) {
	var found []Alternative
	add := func(a Alternative, rounds []Round) {
		a.Leveling, a.Rounds, a.Certificate = p.Leveling, rounds, Certify(p, rounds)
		same := func(x Alternative) bool {
			return x.Certificate.BenchedTwice == a.Certificate.BenchedTwice || x.Certificate.MeetingEvenness.Value <= a.Certificate.MeetingEvenness.Value
		}
		if !slices.ContainsFunc(found, same) {
			found = append(found, a)
		}
	}
	p.Benching = StrictBench
	strict, err := Plan(ctx, p, b)
	if err != nil {
		return nil, err
	}
	add(Alternative{Benching: StrictBench}, strict)
	p.Benching = MixedBench
	b = b.of(&p)
	for _, price := range slices.Backward(prices) {
		w := measure.Usual
		w[measure.Twice] = price * w[measure.Meetings] / 2
		add(Alternative{Benching: MixedBench, Price: price}, search.Priced(ctx, p, b.Moves, &w))
	}
	return found, nil
}
