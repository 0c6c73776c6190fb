package scheduler

import (
	"strings"
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

// round of eight people on two courts.
func fullRound() Round {
	return Round{Games: []Game{
		{Court: 0, A: Team{0, 1}, B: Team{2, 3}},
		{Court: 1, A: Team{4, 5}, B: Team{6, 7}},
	}}
}

func TestAuditNamesWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(p *Problem, r *Round)
		want   string // part of the text; empty = valid
	}{
		{"valid", func(*Problem, *Round) {}, ""},
		{"twice on court", func(_ *Problem, r *Round) { r.Games[1].B[1] = 0 }, "round 1, court 2: P01 already plays on court 1"},
		{"two places", func(_ *Problem, r *Round) { r.Games[1].B[1] = 6 }, "round 1, court 2: P07 has two places on this court"},
		{"out twice", func(p *Problem, r *Round) {
			p.People = append(p.People, Person{Name: "P09"})
			r.Out = []Player{8, 8}
		}, "round 1: P09 sits out 2 times"},
		{"forgotten", func(_ *Problem, r *Round) { r.Games = r.Games[:1] }, "round 1: P05 is there but neither plays nor sits out"},
		{"plays and sits out", func(_ *Problem, r *Round) { r.Out = []Player{3} }, "round 1, court 1: P04 plays and sits out"},
		{"same court", func(_ *Problem, r *Round) { r.Games[1].Court = 0 }, "round 1, court 1: two games are on this court"},
		{"unknown court", func(_ *Problem, r *Round) { r.Games[1].Court = 2 }, "court number 3, but there are 2 courts"},
		{"closed court", func(p *Problem, _ *Round) { p.Courts[1].Open = 1 }, "round 1, court 2: the court is closed"},
		{"unknown person", func(_ *Problem, r *Round) { r.Games[0].A[0] = 8 }, "person 9 plays but is not in the list of 8 people"},
		{"unknown on the bench", func(_ *Problem, r *Round) { r.Out = []Player{-3} }, "person -2 sits out but is not in the list"},
		{"not yet there", func(p *Problem, _ *Round) { p.People[6].Arrive = 1 }, "P07 is not there in this round"},
		{"three on court", func(p *Problem, r *Round) {
			r.Games[1].B[1] = Nobody
			r.Out = []Player{7}
		}, "round 1, court 2: 3 people play where four should"},
		{"singles not wanted", func(_ *Problem, r *Round) {
			r.Games[1] = Game{Court: 1, A: Team{4, Nobody}, B: Team{6, Nobody}}
			r.Out = []Player{5, 7}
		}, "2 people play where four should"},
		{"singles wanted", func(p *Problem, r *Round) {
			p.LeftoverSingles = true
			r.Games[1] = Game{Court: 1, A: Team{4, Nobody}, B: Team{6, Nobody}}
			r.Out = []Player{5, 7}
		}, ""},
		{"never meet", func(p *Problem, _ *Round) { p.NeverMeet = []Pair{{A: 3, B: 0}} }, "round 1, court 1: P01 and P04 meet but shall never meet"},
		{"never partner", func(p *Problem, _ *Round) { p.NeverPartner = []Pair{{A: 5, B: 4}} }, "court 2: P05 and P06 are partners but shall never be"},
		{"couple apart", func(p *Problem, _ *Round) { p.Together = []Pair{{A: 0, B: 2}} }, "P01 plays without the fixed partner P03"},
		{"court wall", func(p *Problem, _ *Round) { p.People[4].Courts = []Court{0} }, "court 2: P05 must not play on this court"},
		{"preferred band", func(p *Problem, _ *Round) {
			p.People[4].Level = 2
			p.Courts[1].MinLevel = 3
		}, ""},
		{"one group", func(p *Problem, _ *Round) {
			p.Format = Mixed
			for i := range p.People {
				p.People[i].Group = []string{"x", "y"}[i%2]
			}
			p.People[1].Group, p.People[2].Group = "x", "y"
		}, "P01 and P02 are a team of one group on a mixed night"},
		{"no set pair", func(p *Problem, _ *Round) {
			p.Format = Pairs
			p.Together = []Pair{{A: 4, B: 6}, {A: 5, B: 7}}
		}, "P05 and P06 are no set pair"},
		{"couple parted", func(p *Problem, _ *Round) { p.Together = []Pair{{A: 0, B: 2}} }, "P01 plays without the fixed partner P03"},
		{"couple parted by a ladder", func(p *Problem, _ *Round) {
			p.Format = Ladder
			p.Together = []Pair{{A: 0, B: 2}}
		}, ""},
		{"too long", func(p *Problem, r *Round) {
			p.MaxRun = 1
			p.History = []Round{*r}
		}, "round 2: P01 plays 2 games running, but 1 is the limit"},
		{"impossible wish", func(p *Problem, _ *Round) { p.NeverMeet = []Pair{{A: 3, B: 9}} }, "a wish names person 4 and person 10, but there are 8 people"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, r := nighttest.Club(8, 2, 1), fullRound()
			c.change(&p, &r)
			found := Audit(p, []Round{r})
			if c.want == "" {
				if len(found) > 0 {
					t.Errorf("a valid round is refused: %s", found[0].Text)
				}
				return
			}
			for _, v := range found {
				if strings.Contains(v.Text, c.want) {
					return
				}
			}
			t.Errorf("%+v does not say %q", found, c.want)
		})
	}
}
