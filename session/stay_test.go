package session

import (
	"context"
	"fmt"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/session/roster"
)

// announced opens a night of 5 rounds with eight people here and one who is announced by rounds.
func announced(t testing.TB, from, last int) (*Desk, *testClock, PersonID) {
	t.Helper()
	d, _, clock := newTestDesk(t)
	s := DefaultSettings(3)
	s.Rounds = 5
	must(t, d, OpenNight{Settings: s, Courts: 2})
	for i := range 8 {
		must(t, d, AddGuest{Name: fmt.Sprintf("Person %d", i)})
	}
	entry := roster.Entry{Name: "Ada", Arrive: roster.Moment{Round: from}, Leave: roster.Moment{Round: last}}
	must(t, d, ImportRoster{Entries: []roster.Entry{entry}, Arrived: true})
	ada, _ := d.Ledger().Club().Named("Ada")
	return d, clock, ada.ID
}

// inRound tells whether somebody has a part in a round, on court or out.
func inRound(r PlannedRound, id PersonID) bool {
	return slices.Contains(r.Out, id) || slices.ContainsFunc(r.Games, func(g PlannedGame) bool { return g.A.Has(id) || g.B.Has(id) })
}

// Who is announced by rounds is planned for just those rounds, however long before round 1 the roster is
// read, and however long rounds take.
func TestRoundsOfARosterAreRounds(t *testing.T) {
	for _, wait := range []time.Duration{0, 40 * time.Minute, 3 * time.Hour} {
		d, clock, ada := announced(t, 3, 4)
		clock.now = clock.now.Add(wait)
		check := func(rounds []PlannedRound, first int) {
			t.Helper()
			for i, r := range rounds {
				if number := first + i; inRound(r, ada) != (number == 3 || number == 4) {
					t.Errorf("%v after the roster was read, with round %d to come: Ada in round %d is %v", wait, first, number, inRound(r, ada))
				}
			}
		}
		plan, err := PlanRotation(context.Background(), d.Ledger(), clock.now)
		if err != nil {
			t.Fatal(err)
		}
		check(plan.Rounds, 1)
		for number := 1; number <= 5; number++ {
			if number == 3 {
				must(t, d, CheckIn{ada})
			}
			plan, err := PlanRotation(context.Background(), d.Ledger(), clock.now)
			if err != nil {
				t.Fatal(err)
			}
			check(plan.Rounds, number)
			must(t, d, CallRound{Plan: plan.Rounds})
			clock.now = clock.now.Add(40 * time.Minute) // rounds take much longer than planned
			for _, g := range d.Ledger().Night().Running() {
				must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 3)})
			}
		}
		n := d.Ledger().Night()
		if n.GamesOf(ada)+n.SatOut(ada) != 2 || !n.contains(ada, Gone) {
			t.Errorf("Ada had a part in %d rounds, and is %v", n.GamesOf(ada)+n.SatOut(ada), n.Attending(ada).State)
		}
	}
}

// Whoever plays the last of the announced rounds leaves with the call of the next; the undo of that call
// brings the person back.
func TestTheLastRoundIsTheLast(t *testing.T) {
	d, clock, ada := announced(t, 0, 1)
	if !d.Ledger().Night().contains(ada, Here) {
		t.Fatal("Ada is not checked in")
	}
	playRound(t, d, clock)
	if a := d.Ledger().NextStep(clock.now); a.Here != 8 || a.Step != StepCall {
		t.Errorf("%d are here for round 2 (step %d), want 8", a.Here, a.Step)
	}
	must(t, d, CallRound{})
	if n := d.Ledger().Night(); !n.contains(ada, Gone) || n.GamesOf(ada)+n.SatOut(ada) != 1 {
		t.Errorf("Ada is %v after %d rounds", n.Attending(ada).State, n.GamesOf(ada)+n.SatOut(ada))
	}
	must(t, d, Undo{})
	if !d.Ledger().Night().contains(ada, Here) {
		t.Error("the undo of the call does not bring Ada back")
	}
}

// Whatever is announced by rounds, a plan made at any time keeps to it.
func TestAPlanKeepsToTheRoundsAnnounced(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		from := rapid.IntRange(0, 5).Draw(rt, "from")
		last := rapid.SampledFrom([]int{0, max(from, 1), max(from, 1) + 1, 5}).Draw(rt, "last")
		d, clock, ada := announced(t, from, last)
		played := rapid.IntRange(0, 3).Draw(rt, "played")
		for range played {
			playRound(t, d, clock)
		}
		clock.now = clock.now.Add(time.Duration(rapid.IntRange(0, 300).Draw(rt, "minutes")) * time.Minute)
		plan, err := PlanRotation(context.Background(), d.Ledger(), clock.now)
		if err != nil {
			rt.Fatal(err)
		}
		for i, r := range plan.Rounds {
			number := played + 1 + i
			if inRound(r, ada) && (number < from || last > 0 && number > last) {
				rt.Errorf("announced from %d to %d, and in round %d", from, last, number)
			}
		}
	})
}

// Late is who is announced for a round that is called or comes next; a rolling night has none.
func TestWhoIsLateByRounds(t *testing.T) {
	d, clock, ada := announced(t, 2, 0)
	late := func() bool { n := d.Ledger().Night(); return n.Late(*n.Attending(ada), clock.now) }
	if late() {
		t.Error("late before round 1")
	}
	must(t, d, CallRound{})
	if late() {
		t.Error("late while round 1 is played")
	}
	for _, g := range d.Ledger().Night().Running() {
		must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 3)})
	}
	if !late() || d.Ledger().NextStep(clock.now).Late != 1 {
		t.Error("round 2 is to be called, and Ada is not late")
	}
	s := d.Ledger().Night().Settings
	s.Flow = Rolling
	must(t, d, ChangeSettings{s})
	if late() {
		t.Error("late for a round in the rolling flow")
	}
	refused(t, d, Expect{Person: ada, From: 3, Last: 2}, "cannot leave before arriving")
}
