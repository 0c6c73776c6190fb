package rungs

import (
	"testing"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/sessiontest"
)

// TestTheLadderOfARound: winners go up and losers down, the top court's winners and the bottom court's losers
// stay, and once all scores are in everybody's court of the next round agrees with that.
func TestTheLadderOfARound(t *testing.T) {
	s := session.DefaultSettings(7)
	s.Format, s.Rounds = scheduler.Ladder, 5
	d := sessiontest.Open(t, s, 3, 12)
	if _, ok := Of(d.Night(), nil); ok {
		t.Error("there is a ladder before the first round")
	}
	d.Must(session.CallRound{})
	for round := range 3 {
		l, ok := Of(d.Night(), nil)
		if !ok || len(l.Rungs) != 3 || l.Rungs[0].Court != "1" || l.Round != round+1 {
			t.Fatalf("the ladder is %+v", l)
		}
		for rung, r := range l.Rungs {
			for _, step := range r.Steps {
				if l.Goes(rung, step) != Unknown {
					t.Errorf("%s goes %d before the game is over", step.Person, l.Goes(rung, step))
				}
				if came := l.Came(rung, step); (came == Unknown) != (round == 0) {
					t.Errorf("in round %d %s came %d", round+1, step.Person, came)
				}
			}
		}
		d.Pass(12)
		for _, g := range d.Night().Running() {
			d.Finish(g, 11, 3, scoring.Played)
		}
		plan := d.Ahead()
		byRule, _ := Of(d.Night(), nil)
		known, _ := Of(d.Night(), plan)
		for rung, r := range byRule.Rungs {
			for i, step := range r.Steps {
				want := Stays
				switch {
				case step.Won != (i < 2) || step.Ours+step.Theirs != 14:
					t.Errorf("%+v of an 11-3 for the first team", step)
				case step.Won && rung > 0:
					want = Up
				case !step.Won && rung < 2:
					want = Down
				}
				if got := byRule.Goes(rung, step); got != want {
					t.Errorf("%s on court %s goes %d, want %d", step.Person, r.Court, got, want)
				}
				if got := known.Goes(rung, known.Rungs[rung].Steps[i]); got != want || known.Rungs[rung].Steps[i].Next == "" {
					t.Errorf("with the next round known %s goes %d, want %d", step.Person, got, want)
				}
			}
		}
		d.Must(session.CallRound{Plan: plan})
	}
}

// TestWhoGoesAnotherWay than the game says is told apart from who goes as it says.
func TestWhoGoesAnotherWay(t *testing.T) {
	l := Ladder{Rungs: []Rung{{Court: "1"}, {Court: "2"}, {Court: "3"}}}
	for _, c := range []struct {
		rung int
		step Step
		want int
	}{
		{0, Step{Over: true, Won: true, Next: "1"}, 0},
		{0, Step{Over: true, Won: true, Next: "2"}, 1},
		{0, Step{Over: true, Next: "1"}, -1},
		{1, Step{Over: true, Won: true, Next: "1"}, 0},
		{1, Step{Over: true, Next: "3"}, 0},
		{1, Step{Over: true, Next: "1"}, -2},
		{2, Step{Over: true, Next: "3"}, 0},
		{2, Step{Over: true, Next: "2"}, -1},
		{2, Step{Over: true, Won: true, Next: "3"}, 1},
		{2, Step{Over: true, Won: true}, 0},
		{2, Step{Over: true, Level: true, Next: "3"}, 0},
		{2, Step{Over: true, Void: true, Next: "3"}, 0},
		{2, Step{Next: "3"}, 0},
		{2, Step{Over: true, Won: true, Next: "9"}, 0},
	} {
		if got := l.Off(c.rung, c.step); got != c.want {
			t.Errorf("%+v on rung %d is %d off, want %d", c.step, c.rung, got, c.want)
		}
	}
}
