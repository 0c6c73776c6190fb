package scheduler

import (
	"context"
	"slices"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/search"
)

// Alternative is a plan among others that trade sitting out twice running, see [Alternatives], or even games, see
// [LevelAlternatives], against meeting everybody.
type Alternative struct {
	Benching    Benching
	Price       int      // of two sit-outs twice running, see TwicePrice of [Problem]; 0 where these are avoided
	Leveling    Leveling // how much even games were worth
	Rounds      []Round
	Certificate Certificate
}

// TwicePeople is how many people sit out twice running, in the history of the problem or in these rounds.
func TwicePeople(p Problem, rounds []Round) int {
	people := len(p.People)
	last, twice := make([]int, people), make([]bool, people)
	for r, round := range slices.Concat(p.History, rounds) {
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
var prices = []int{UsualPrice, 12}

// UsualPrice is what two sit-outs twice running weigh, in repeated meetings, where nothing else is said.
const UsualPrice = 3

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
	for _, p.TwicePrice = range slices.Backward(prices) {
		rounds, err := Plan(ctx, p, b)
		if err != nil {
			return nil, err
		}
		add(Alternative{Benching: MixedBench, Price: p.TwicePrice}, rounds)
	}
	return found, nil
}
