package session

import (
	"slices"
	"testing"
	"time"
)

// TestThunderRestartsTheCount: 30 minutes from the last thunder, taken back and brought again like anything
// else, and over they end nothing.
func TestThunderRestartsTheCount(t *testing.T) {
	h := newLongNight(t)
	d, clock := h.Desk, h.clock
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, CallRound{})
	refused(t, d, HearThunder{}, "play is not held: hold it for lightning first")
	must(t, d, HoldPlay{"lightning or thunder"})
	left := func(want time.Duration) {
		t.Helper()
		if got := d.Ledger().Night().Hold.ThunderLeft(clock.now); got != want {
			t.Errorf("%v are left, want %v", got, want)
		}
	}
	left(30 * time.Minute)
	h.pass(20 * time.Minute)
	left(10 * time.Minute)
	must(t, d, HearThunder{})
	left(30 * time.Minute)
	h.pass(5 * time.Minute)
	must(t, d, Undo{})
	left(5 * time.Minute)
	must(t, d, Redo{})
	left(25 * time.Minute)
	h.pass(2 * time.Hour)
	left(0)
	if h := d.Ledger().Night().Hold; h == nil || h.Heard != 1 {
		t.Fatalf("the hold is %+v two hours later: it must not end by itself", h)
	}
	must(t, d, HearThunder{})
	left(30 * time.Minute)
	must(t, d, ResumePlay{}, HoldPlay{"heat"})
	refused(t, d, HearThunder{}, "held for another reason (heat)")
}

// TestTheCountGoesOnWhenTheClockIsSet: what is left is time that passed, whatever the laptop shows.
func TestTheCountGoesOnWhenTheClockIsSet(t *testing.T) {
	h := newLongNight(t)
	withPeople(t, h.Desk, 1, 4, Rounds)
	must(t, h.Desk, CallRound{}, HoldPlay{"lightning"})
	h.pass(4 * time.Minute)
	must(t, h.Desk, HearThunder{})
	h.pass(10 * time.Minute)
	h.set(-time.Hour)
	must(t, h.Desk, NoteClock{})
	if got := h.Ledger().Night().Hold.ThunderLeft(h.Now()); got != 20*time.Minute {
		t.Errorf("%v are left of 30 minutes, 10 minutes after the thunder", got)
	}
}

func TestWhoWasTold(t *testing.T) {
	d := newLongNight(t).Desk
	withPeople(t, d, 3, 12, Rounds)
	must(t, d, CallRound{})
	refused(t, d, TellCourts{[]CourtID{"1"}}, "play is not held")
	must(t, d, FinishGame{Game: 3, Final: final(t, 11, 7)}, HoldPlay{"wet court"})
	n := func() *Night { return d.Ledger().Night() }
	if got := n().Untold(); !slices.Equal(got, []CourtID{"1", "2"}) {
		t.Errorf("%v are to be told, want the courts that play", got)
	}
	must(t, d, TellCourts{[]CourtID{"2"}})
	refused(t, d, TellCourts{[]CourtID{"2"}}, "told already")
	refused(t, d, TellCourts{[]CourtID{"3"}}, "court 3 has no game")
	if got := n().Untold(); !slices.Equal(got, []CourtID{"1"}) {
		t.Errorf("%v are to be told", got)
	}
	must(t, d, TellCourts{n().Untold()}, Undo{})
	if got := n().Untold(); !slices.Equal(got, []CourtID{"1"}) {
		t.Errorf("after an undo %v are to be told", got)
	}
}
