package session

import (
	"reflect"
	"strings"
	"testing"

	"club/quadrille/scheduler"
)

// waysOf are the ways of the night beside its rotation.
func waysOf(t *testing.T, d *Desk) (Rotation, []Choice) {
	t.Helper()
	r, err := PlanRotation(t.Context(), d.Ledger(), evening)
	if err != nil {
		t.Fatal(err)
	}
	others, err := Ways(t.Context(), d.Ledger(), evening)
	if err != nil {
		t.Fatal(err)
	}
	return r, Beside(others, d.Ledger(), evening, r)
}

// again is the same log read by a new desk.
func again(t *testing.T, log *MemoryLog) *Desk {
	t.Helper()
	d, err := NewDesk(log, (&testClock{evening}).Now, func() PersonID { return "again" })
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestPickedWayIsKept: what was picked is called as it was shown, holds for later plans and after opening again, and
// is undone like anything.
func TestPickedWayIsKept(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 2, 16, Rounds)
	before, ways := waysOf(t, d)
	if len(ways) < 2 || ways[0].Certificate.BenchedTwice.Value != 0 || ways[0].Now || !ways[len(ways)-1].Now {
		t.Fatalf("ways: %v", words(ways))
	}
	if got := ways[0].Words(); got != "nobody twice running: 2 closed groups, 48 repeats" {
		t.Errorf("the strict way reads %q", got)
	}
	for k := 1; k < len(ways); k++ {
		if ways[k].Certificate.MeetingEvenness.Value >= ways[k-1].Certificate.MeetingEvenness.Value {
			t.Errorf("in this order nothing is traded: %v", words(ways))
		}
	}
	must(t, d, PickWay{ways[0].Way, ways[0].Rounds})
	after, list := waysOf(t, d)
	if !reflect.DeepEqual(after.Rounds, ways[0].Rounds) || !list[0].Now {
		t.Errorf("what was picked is not planned: %v", words(list))
	}
	refused(t, d, PickWay{ways[0].Way, ways[0].Rounds}, "picked already")
	must(t, d, Undo{})
	if r, _ := waysOf(t, d); !reflect.DeepEqual(r.Rounds, before.Rounds) || d.Ledger().Night().Picked != nil {
		t.Error("the undo does not bring back what was planned before")
	}
	must(t, d, Redo{})
	must(t, d, CallRound{after.Rounds})
	if got := d.Ledger().Night().Plan; !reflect.DeepEqual(got, ways[0].Rounds[1:]) {
		t.Error("another round was called than was picked")
	}
	must(t, d, AddGuest{Name: "Late"})
	d = again(t, log)
	r, err := PlanRotation(t.Context(), d.Ledger(), evening)
	if err != nil || r.Certificate.BenchedTwice.Gap() > 0 {
		t.Errorf("after an arrival and opening again: %d out twice running, %v", r.Certificate.BenchedTwice.Value, err)
	}
	s := d.Ledger().Night().Settings
	s.Rounds = 9
	must(t, d, ChangeSettings{s})
	if d.Ledger().Night().Way().Benching != scheduler.StrictBench {
		t.Error("a change of the rounds took back what was picked")
	}
	s.Benching = scheduler.StrictBench
	must(t, d, ChangeSettings{s})
	if d.Ledger().Night().Picked != nil {
		t.Error("a pick outlives a setting that settles the same")
	}
}

// TestPickOfOtherPeopleIsRefused: a way is picked as it was shown or not at all.
func TestPickOfOtherPeopleIsRefused(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 2, 16, Rounds)
	_, ways := waysOf(t, d)
	must(t, d, AddGuest{Name: "Late"})
	refused(t, d, PickWay{ways[0].Way, ways[0].Rounds}, "look at the ways again")
	refused(t, d, PickWay{Way{Price: -1}, ways[0].Rounds}, "repeated meetings")
	s := d.Ledger().Night().Settings
	s.Flow = Rolling
	must(t, d, ChangeSettings{s})
	refused(t, d, PickWay{ways[0].Way, ways[0].Rounds}, "rolling")
}

// TestWaysOfLevels: with levels the steps of even games are ways as well.
func TestWaysOfLevels(t *testing.T) {
	d, _, _ := newTestDesk(t)
	must(t, d, OpenNight{Settings: DefaultSettings(3), Courts: 4})
	for i := range 16 {
		must(t, d, AddGuest{Name: strings.Repeat("x", i+1), Level: 2 + float64(i)*3/15})
	}
	_, ways := waysOf(t, d)
	if len(ways) < 2 || !ways[0].Now || !ways[1].Levels || ways[1].Certificate.Levels.Onesided >= ways[0].Certificate.Levels.Onesided {
		t.Fatalf("ways: %v", words(ways))
	}
	must(t, d, PickWay{ways[1].Way, ways[1].Rounds})
	if got := d.Ledger().Night().Way().Leveling(); got != ways[1].Way.Leveling() {
		t.Errorf("levels %s", got)
	}
}

// TestNoWaysWithoutAChoice: where nobody sits out and nobody has a level there is nothing to choose.
func TestNoWaysWithoutAChoice(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 4, 16, Rounds)
	if _, ways := waysOf(t, d); len(ways) > 0 {
		t.Errorf("ways: %v", words(ways))
	}
}

func words(ways []Choice) []string {
	var out []string
	for _, w := range ways {
		out = append(out, w.Words())
	}
	return out
}

// TestHowOftenPeopleSitOutTwiceRunningInWords.
func TestHowOftenPeopleSitOutTwiceRunningInWords(t *testing.T) {
	for _, c := range []struct {
		times, people int
		want          string
	}{
		{0, 0, "nobody twice running"},
		{1, 1, "1 person twice running once"},
		{4, 4, "4 people twice running once"},
		{6, 4, "4 people twice running, 6 times in all"},
		{2, 1, "1 person twice running, 2 times in all"},
	} {
		if got := twiceWord(c.times, c.people); got != c.want {
			t.Errorf("%d times, %d people: %q, want %q", c.times, c.people, got, c.want)
		}
	}
}
