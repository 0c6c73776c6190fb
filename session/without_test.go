package session

import (
	"slices"
	"strings"
	"testing"
	"time"
)

// TestWouldBeSaysWhatAnUndoTakes: what the words say about an undo is what comes of it.
func TestWouldBeSaysWhatAnUndoTakes(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 9, Rounds)
	said := func(want ...string) {
		t.Helper()
		a, _ := d.Ledger().NextUndo()
		would, err := d.Ledger().Without(a.ID)
		if err != nil {
			t.Fatalf("%s cannot be undone: %v", d.Ledger().Describe(a), err)
		}
		text := strings.Join(WouldBe(d.Ledger().Club(), would), "\n")
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("without %q it says\n%s\nand not %q", d.Ledger().Describe(a), text, w)
			}
		}
	}
	club := func() *Club { return d.Ledger().Club() }
	said(club().Name(club().Night().Roll[8].Person) + ": has no part in the night")
	must(t, d, Rest{Person: club().Night().Roll[8].Person})
	said("is here to play")
	must(t, d, CallRound{})
	g := club().Night().Game(1)
	said("round 1 is not called", "court 1: "+pairName(club(), g.A)+" v "+pairName(club(), g.B)+" are not called")
	clock.now = clock.now.Add(9 * time.Minute)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 7)})
	said("court 1: the score 11-7 is gone, and the game goes on", "places: ", "has none in place of 1")
	must(t, d, CorrectScore{Game: 1, Final: final(t, 7, 11)})
	said("court 1: 11-7 again in place of 7-11", "3 in place of 1")
	must(t, d, CloseCourt{Court: "2"})
	said("court 2 is open")
	must(t, d, HoldPlay{Why: "heat"})
	said("play is not held")
	must(t, d, ResumePlay{})
	said("play is held again: heat")
	s := club().Night().Settings
	s.Rounds = 3
	must(t, d, ChangeSettings{Settings: s})
	said("settings: ")

	first := d.Ledger().Actions()
	i := slices.IndexFunc(first, func(a Action) bool { return a.has(func(e Event) bool { _, ok := e.(RoundCalled); return ok }) })
	if _, err := d.Ledger().Without(first[i].ID); err == nil || !strings.Contains(err.Error(), "rests on it") {
		t.Errorf("the call can be taken away under its score: %v", err)
	}
	if got := WouldBe(club(), club()); len(got) > 0 {
		t.Errorf("a state differs from itself: %q", got)
	}
}

// TestWithoutIsWhatUndoDoes: the state that is told of is the one that the undo leads to.
func TestWithoutIsWhatUndoDoes(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 9, Rounds)
	must(t, d, CallRound{})
	clock.now = clock.now.Add(9 * time.Minute)
	must(t, d, FinishGame{Game: 2, Final: final(t, 11, 3)})
	for range 5 {
		a, _ := d.Ledger().NextUndo()
		would, err := d.Ledger().Without(a.ID)
		if err != nil {
			t.Fatal(err)
		}
		must(t, d, Undo{})
		if got := WouldBe(d.Ledger().Club(), would); len(got) > 0 {
			t.Errorf("the undo of %q leads elsewhere: %q", d.Ledger().Describe(a), got)
		}
	}
}
