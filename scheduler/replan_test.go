package scheduler

import (
	"fmt"
	"slices"
	"testing"

	"club/quadrille/scheduler/night/nighttest"
)

// TestReplanKeepsWhatPeopleSaw plans on after somebody left or came, from the plan and from nothing. What comes from
// the plan is never worse, and keeps most of the games where it can.
func TestReplanKeepsWhatPeopleSaw(t *testing.T) {
	for _, c := range []struct {
		people, courts, rounds, after int
		comes                         bool
		kept                          int // of a hundred games at least
		meetings                      int // at most
	}{
		{24, 6, 7, 2, true, 80, 0}, // a plan from nothing has 4 or 5 repeated meetings
		{24, 6, 7, 1, true, 80, 0},
		{32, 8, 8, 2, true, 80, 0},
		{37, 7, 8, 2, false, 50, 0},
		{40, 9, 8, 2, false, 30, 0},
		{16, 4, 5, 1, false, 0, 3},
	} {
		t.Run(fmt.Sprintf("%d-%d-%d after %d, comes %v", c.people, c.courts, c.rounds, c.after, c.comes), func(t *testing.T) {
			p := nighttest.Club(c.people, c.courts, c.rounds)
			plan := mustPlan(t, p, Budget{})
			p.History, p.Rounds = plan[:c.after], c.rounds-c.after
			if c.comes {
				p.People = append(p.People, Person{Name: "late", Arrive: c.after})
			} else {
				p.People[c.people-1].Leave = c.after
			}
			rounds, change, err := Replan(t.Context(), p, plan[c.after:], Budget{})
			if err != nil {
				t.Fatal(err)
			}
			for _, v := range Audit(p, rounds) {
				t.Error(v.Text)
			}
			if 100*change.Kept < c.kept*change.Games {
				t.Errorf("%d of %d games stay", change.Kept, change.Games)
			}
			warm, anew := Certify(p, rounds), Certify(p, mustPlan(t, p, Budget{}))
			if warm.MeetingEvenness.Value > min(c.meetings, anew.MeetingEvenness.Value) {
				t.Errorf("repeated meetings %+v, from nothing %+v", warm.MeetingEvenness, anew.MeetingEvenness)
			}
			if warm.SitoutEvenness.Value > anew.SitoutEvenness.Value || warm.PartnerRepeats.Gap() > 0 || warm.BenchedTwice.Gap() > 0 {
				t.Errorf("%+v", warm)
			}
		})
	}
}

// TestReplanOfNothingNew keeps every game where nothing changed.
func TestReplanOfNothingNew(t *testing.T) {
	p := nighttest.Club(22, 5, 8)
	plan := mustPlan(t, p, Budget{})
	p.History, p.Rounds = plan[:3], 5
	rounds, change, err := Replan(t.Context(), p, plan[3:], Budget{})
	if err != nil || change.Kept != change.Games || change.Games != 25 {
		t.Errorf("%+v, %v", change, err)
	}
	for r := range rounds {
		if !slices.Equal(rounds[r].Out, plan[3+r].Out) {
			t.Errorf("round %d: out %v, shown %v", r+4, rounds[r].Out, plan[3+r].Out)
		}
	}
}
