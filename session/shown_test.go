package session

import (
	"reflect"
	"testing"

	"club/quadrille/scheduler"
)

// TestReplanSaysWhatChanged: an arrival and a departure leave most of what was shown, before the first call too.
func TestReplanSaysWhatChanged(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 7, 37, Rounds)
	shown, err := PlanRotation(t.Context(), d.Ledger(), evening)
	if err != nil {
		t.Fatal(err)
	}
	seen := d.Ledger().Show(shown)
	for _, c := range []Command{AddGuest{Name: "Late"}, Leave{d.Ledger().Night().Roll[3].Person}} {
		must(t, d, c)
		r, err := ReplanRotation(t.Context(), d.Ledger(), evening, seen)
		if err != nil {
			t.Fatal(err)
		}
		anew, _ := PlanRotation(t.Context(), d.Ledger(), evening)
		if r.Change.Games != 56 || r.Change.Kept < 1 || Changed(shown.Rounds, anew.Rounds, 1).Kept >= r.Change.Kept {
			t.Errorf("%T: %d of %d games stay, anew %d", c, r.Change.Kept, r.Change.Games, Changed(shown.Rounds, anew.Rounds, 1).Kept)
		}
		if r.Certificate.MeetingEvenness.Value > anew.Certificate.MeetingEvenness.Value {
			t.Errorf("%T: %d repeats, anew %d", c, r.Certificate.MeetingEvenness.Value, anew.Certificate.MeetingEvenness.Value)
		}
		must(t, d, Undo{})
	}
}

// TestImprovedRotationIsCalled: rounds after the next become better, the next one stays as it was shown, the improved
// ones are called, and what changes nothing for the plan does not throw them away.
func TestImprovedRotationIsCalled(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 9, 40, Rounds)
	long := d.Ledger().Night().Settings
	long.Rounds = 15
	must(t, d, ChangeSettings{long})
	first, err := PlanRotation(t.Context(), d.Ledger(), evening)
	if err != nil {
		t.Fatal(err)
	}
	r, found := first, 0
	for slice := range uint64(8) {
		next, better, err := ImproveRotation(t.Context(), d.Ledger(), evening, r, slice)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(next.Rounds[0], first.Rounds[0]) {
			t.Fatalf("slice %d: another next round", slice)
		}
		if better {
			found++
		} else if !reflect.DeepEqual(next, r) {
			t.Fatalf("slice %d: another rotation though nothing was found", slice)
		}
		if r = next; found == 2 {
			break
		}
	}
	if found == 0 || r.Certificate.MeetingEvenness.Value > first.Certificate.MeetingEvenness.Value {
		t.Fatalf("%d finds, %d repeats, before %d", found, r.Certificate.MeetingEvenness.Value, first.Certificate.MeetingEvenness.Value)
	}
	must(t, d, CallRound{r.Rounds})
	if got := d.Ledger().Night().Plan; !reflect.DeepEqual(got, r.Rounds[1:]) {
		t.Error("not the improved rounds are planned on")
	}
	for _, g := range d.Ledger().Night().Running() {
		must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 5)})
	}
	onward, err := PlanRotation(t.Context(), d.Ledger(), evening)
	if err != nil || !reflect.DeepEqual(onward.Rounds, r.Rounds[1:]) {
		t.Fatalf("another rotation after the round: %v", err)
	}
	for slice := uint64(8); slice < 40; slice++ {
		next, better, err := ImproveRotation(t.Context(), d.Ledger(), evening, onward, slice)
		if err != nil {
			t.Fatal(err)
		}
		if onward = next; better {
			break
		}
	}
	seen := d.Ledger().Show(onward)
	must(t, d, ChangePerson{Person{ID: d.Ledger().Night().Roll[0].Person, Name: "Another name"}})
	if kept, err := ReplanRotation(t.Context(), d.Ledger(), evening, seen); err != nil || !reflect.DeepEqual(kept.Rounds, onward.Rounds) {
		t.Errorf("a new name threw the improved rounds away: %v", err)
	}
	must(t, d, CallRound{onward.Rounds})
	if got := d.Ledger().Night().Plan; !reflect.DeepEqual(got, onward.Rounds[1:]) {
		t.Error("the second call took the plan from before it was improved")
	}
	s := d.Ledger().Night().Settings
	s.Format = scheduler.Ladder
	must(t, d, ChangeSettings{s})
	if _, better, err := ImproveRotation(t.Context(), d.Ledger(), evening, onward, 0); better || err != nil {
		t.Errorf("a ladder was improved: %v", err)
	}
}

// TestChangeInWords: people are named where one or two of them move.
func TestChangeInWords(t *testing.T) {
	game := func(c CourtID, a, b, x, y PersonID) PlannedGame { return PlannedGame{c, Team{a, b}, Team{x, y}} }
	was := []PlannedRound{{Games: []PlannedGame{game("1", "a", "b", "c", "d"), game("2", "e", "f", "g", "h")}, Out: []PersonID{"i"}}}
	name := func(id PersonID) string { return string(id) }
	for _, c := range []struct {
		is   []PlannedGame
		out  []PersonID
		want string
	}{
		{[]PlannedGame{game("1", "d", "c", "a", "b"), game("2", "e", "f", "g", "h")}, []PersonID{"i"}, "all of 2 coming games stay"},
		{[]PlannedGame{game("1", "e", "b", "c", "d"), game("2", "a", "f", "g", "h")}, []PersonID{"i"}, "none of 2 coming games stays; round 5: e and a swap courts"},
		{[]PlannedGame{game("1", "a", "b", "c", "d"), game("2", "e", "f", "g", "i")}, []PersonID{"h"}, "1 of 2 coming games stays; round 5: i plays for h"},
		{[]PlannedGame{game("1", "a", "b", "c", "i"), game("2", "e", "f", "g", "h")}, nil, "1 of 2 coming games stays; round 5: i plays on court 1"},
		{[]PlannedGame{game("1", "a", "c", "b", "d"), game("2", "e", "f", "g", "h")}, []PersonID{"i"}, "1 of 2 coming games stays; round 5: other partners on the same courts"},
		{[]PlannedGame{game("1", "e", "f", "c", "d"), game("2", "a", "b", "g", "h")}, []PersonID{"i"}, "none of 2 coming games stays; round 5: 4 people move"},
	} {
		if got := Changed(was, []PlannedRound{{c.is, c.out}}, 5).Words(name); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	if got := Changed(nil, was, 1).Words(name); got != "" {
		t.Errorf("nothing was shown, and still %q", got)
	}
}
