package scheduler

import (
	"context"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night/nighttest"
)

// boundNights are nights on which not everybody may play in everybody's stead.
func boundNights() map[string]Problem {
	couples, walls, mixed, runs := nighttest.Club(21, 5, 7), nighttest.Club(21, 5, 7), nighttest.Club(26, 6, 7), nighttest.Club(21, 5, 7)
	couples.Together = []Pair{{A: 0, B: 1}, {A: 2, B: 3}}
	for i := range 4 {
		walls.People[i].Courts = []Court{0, 1}
	}
	mixed.Format = Mixed
	for i := range mixed.People {
		mixed.People[i].Group = []string{"x", "y"}[i%2]
	}
	runs.MaxRun = 3
	return map[string]Problem{"couples": couples, "walls": walls, "mixed": mixed, "runs": runs}
}

// TestReplanBoundNights: with couples, walls, groups or a limit of games running a re-plan keeps what was shown
// where that is as good, and is never worse than one from nothing.
func TestReplanBoundNights(t *testing.T) {
	fewMoves := Budget{Moves: 100_000} // with few, what people saw often is as good as anything that is found
	kept := 0
	for name, p := range boundNights() {
		for _, comes := range []bool{false, true} {
			t.Run(fmt.Sprintf("%s, comes %v", name, comes), func(t *testing.T) {
				p := p
				plan := mustPlan(t, p, Budget{})
				p.History, p.Rounds = plan[:2], p.Rounds-2
				if comes {
					p.People = append(p.People[:len(p.People):len(p.People)], Person{Name: "late", Arrive: 2, Group: p.People[0].Group})
				} else {
					p.People = append([]Person(nil), p.People...)
					p.People[len(p.People)-1].Leave = 2
				}
				for _, budget := range []Budget{{}, fewMoves} {
					rounds, change, err := Replan(t.Context(), p, plan[2:], budget)
					if err != nil {
						t.Fatal(err)
					}
					for _, v := range Audit(p, rounds) {
						t.Error(v.Text)
					}
					anew := mustPlan(t, p, budget)
					a, b := Certify(p, rounds), Certify(p, anew)
					t.Logf("%d of %d stay, anew %d; repeats %d, anew %d", change.Kept, change.Games, Changed(plan[2:], anew).Kept, a.MeetingEvenness.Value, b.MeetingEvenness.Value)
					if budget == fewMoves {
						kept += change.Kept
					}
					if a.SitoutEvenness.Value > b.SitoutEvenness.Value || a.PartnerRepeats.Value > b.PartnerRepeats.Value ||
						a.MeetingEvenness.Value > b.MeetingEvenness.Value {
						t.Errorf("worse than from nothing: %+v, %+v", a, b)
					}
				}
			})
		}
	}
	if kept < 40 {
		t.Errorf("%d games stay in all", kept)
	}
}

// TestReplanAnyNight: whatever the night and whatever was shown, a re-plan is valid and keeps as many wishes as a plan
// from nothing.
func TestReplanAnyNight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.AnyProblem(t)
		plan, err := Plan(context.Background(), p, Budget{Moves: 2000})
		if err != nil || len(plan) < 2 {
			t.Skip("no plan")
		}
		next := p
		next.History, next.Rounds = append(p.History[:len(p.History):len(p.History)], plan[0]), len(plan)-1
		next.People = append([]Person(nil), p.People...)
		gone := rapid.IntRange(0, len(p.People)-1).Draw(t, "who leaves")
		next.People[gone].Leave = max(next.People[gone].Arrive+1, len(next.History))
		rounds, _, err := Replan(context.Background(), next, plan[1:], Budget{Moves: 5000})
		if err != nil {
			t.Skip("nothing can be played without that one")
		}
		for _, v := range Audit(next, rounds) {
			t.Error(v.Text)
		}
	})
}
