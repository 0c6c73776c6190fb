package scheduler

import (
	"reflect"
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

func TestIdleCourtsAreFoundWithTheGamesThatWerePossible(t *testing.T) {
	short := func() Round { // one court of two is used
		return Round{Games: []Game{{A: Team{0, 1}, B: Team{2, 3}}}, Out: []Player{4, 5, 6, 7}}
	}
	for _, c := range []struct {
		name   string
		change func(p *Problem, r *Round)
		want   []Idle
	}{
		{"all four could have played", func(*Problem, *Round) {}, []Idle{{0, []Court{1}, 1}}},
		{"full", func(_ *Problem, r *Round) { *r = fullRound() }, nil},
		{"closed", func(p *Problem, _ *Round) { p.Courts[1].Close, p.Courts[1].Open = 9, 8 }, nil},
		{"too few people", func(p *Problem, r *Round) {
			p.People = p.People[:7]
			r.Out = r.Out[:3]
		}, []Idle{{0, []Court{1}, 0}}},
		{"not all there", func(p *Problem, r *Round) {
			p.People[7].Arrive = 2
			r.Out = r.Out[:3]
		}, []Idle{{0, []Court{1}, 0}}},
		{"two kept apart", func(p *Problem, _ *Round) { p.NeverMeet = []Pair{{A: 4, B: 5}} }, []Idle{{0, []Court{1}, 1}}},
		{"four who never meet", func(p *Problem, _ *Round) {
			for a := Player(4); a < 8; a++ {
				for b := range a {
					p.NeverMeet = append(p.NeverMeet, Pair{A: a, B: b})
				}
			}
		}, []Idle{{0, []Court{1}, 0}}},
		{"a ladder", func(p *Problem, _ *Round) { p.Format = Ladder }, []Idle{{0, []Court{1}, 1}}},
		{"one group is short", func(p *Problem, _ *Round) {
			p.Format = Mixed
			for i := range p.People {
				p.People[i].Group = "x"
			}
			p.People[1].Group, p.People[3].Group, p.People[5].Group = "y", "y", "y"
		}, []Idle{{0, []Court{1}, 0}}},
		{"a rest is due", func(p *Problem, _ *Round) {
			p.MaxRun = 1
			p.History = []Round{fullRound()}
		}, []Idle{{1, []Court{1}, 0}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, r := nighttest.Club(8, 2, 1), short()
			c.change(&p, &r)
			if got := IdleCourts(p, []Round{r}); !reflect.DeepEqual(got, c.want) {
				t.Errorf("got %+v, want %+v", got, c.want)
			}
		})
	}
}

// Who has left, comes later, or a court that is closed by then makes no game possible; what comes back into
// play does.
func TestIdleCountsWhoIsThereInTheRound(t *testing.T) {
	p := nighttest.Club(12, 3, 4)
	for i := 8; i < 12; i++ {
		p.People[i].Leave = 2 // plays rounds 1 and 2
	}
	p.People[7].Arrive = 1
	p.Courts[2].Close = 3
	var rounds []Round
	for r := range 4 {
		round := Round{Games: []Game{{A: Team{0, 1}, B: Team{2, 3}}}}
		for i := Player(4); i < 12; i++ {
			if p.People[i].PresentIn(r) {
				round.Out = append(round.Out, i)
			}
		}
		rounds = append(rounds, round)
	}
	both, one := []Court{1, 2}, []Court{1}
	want := []Idle{{0, both, 1}, {1, both, 2}, {2, both, 1}, {3, one, 1}}
	if got := IdleCourts(p, rounds); !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// A plan leaves no court empty that could have a game.
func TestPlansLeaveNoGameOut(t *testing.T) {
	for people := 4; people <= 21; people++ {
		p := nighttest.Club(people, 4, 3)
		for _, idle := range IdleCourts(p, mustPlan(t, p, Budget{Moves: 2000})) {
			if idle.More > 0 {
				t.Errorf("%d people on 4 courts: round %d could have %d more games", people, idle.Round+1, idle.More)
			}
		}
	}
}
