package scheduler

import (
	"context"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night/nighttest"
)

// TestBoundsHoldWhenSomebodyIsPutIn lets people take each other's places in rounds of a plan, whatever was
// asked: the night is then not below any bound of its certificate either.
func TestBoundsHoldWhenSomebodyIsPutIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.AnyProblem(t)
		for i := range p.People {
			p.People[i].Courts = nil
		}
		rounds, err := Plan(context.Background(), p, Budget{Moves: 2_000})
		if err != nil {
			t.Skip("no plan")
		}
		for range rapid.IntRange(1, 4).Draw(t, "times") {
			round := &rounds[rapid.IntRange(0, len(rounds)-1).Draw(t, "round")]
			named := round.Named()
			takePlaces(round, rapid.SampledFrom(named).Draw(t, "one"), rapid.SampledFrom(named).Draw(t, "other"))
		}
		checkBounds(t, Certify(p, rounds))
		var games []Game
		for _, r := range rounds {
			games = append(games, r.Games...)
		}
		checkBounds(t, CertifyGames(p, games))
	})
}

// takePlaces lets two people of a round take each other's places.
func takePlaces(r *Round, i, j Player) {
	other := func(x Player) Player {
		switch x {
		case i:
			return j
		case j:
			return i
		}
		return x
	}
	for k := range r.Games {
		for _, team := range []*Team{&r.Games[k].A, &r.Games[k].B} {
			team[0], team[1] = other(team[0]), other(team[1])
		}
	}
	for k := range r.Out {
		r.Out[k] = other(r.Out[k])
	}
}

// TestBoundsKnowPairsThatStay: of four set pairs and one person over, one pair is parted when somebody goes
// home, and whoever is left plays on with the one over. The others still repeat their partner every
// time, and the bounds say so.
func TestBoundsKnowPairsThatStay(t *testing.T) {
	p := nighttest.Club(9, 2, 4)
	p.Format = Pairs
	p.History = mustPlan(t, p, Budget{})
	p.People[1].Leave = 4
	p.Together = []Pair{{A: 0, B: 8}, {A: 2, B: 3}, {A: 4, B: 5}, {A: 6, B: 7}}
	c := Certify(p, mustPlan(t, p, Budget{}))
	if c.PartnerRepeats != (Value{Value: 3*7 + 2*3, Bound: 3*7 + 2*3}) {
		t.Errorf("three pairs repeat seven times each, and two three times: %+v", c.PartnerRepeats)
	}
	if c.PartnerEvenness.Gap() < 0 || c.OpponentEvenness.Gap() < 0 || c.MeetingEvenness.Gap() < 0 || c.BenchedTwice.Gap() < 0 {
		t.Errorf("below a bound: %+v", c)
	}
}
