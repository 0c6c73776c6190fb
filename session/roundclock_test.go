package session

import (
	"testing"
	"time"
)

// TestRoundClock: by the time limit where there is one, else by pace; a hold stands still; with the last score it
// is gone.
func TestRoundClock(t *testing.T) {
	for _, limit := range []int{0, 12} {
		h := newLongNight(t)
		s := DefaultSettings(3)
		s.Scoring.Minutes = limit
		must(t, h.Desk, OpenNight{Settings: s, Courts: 2})
		for _, name := range []string{"A", "B", "C", "D", "E", "F", "G", "H"} {
			must(t, h.Desk, AddGuest{Name: name + " Ash"})
		}
		if _, ok := h.Ledger().Night().RoundClock(h.Now()); ok {
			t.Fatal("a round is timed before one is called")
		}
		must(t, h.Desk, CallRound{})
		clock := func() RoundClock {
			t.Helper()
			c, ok := h.Ledger().Night().RoundClock(h.Now())
			if !ok {
				t.Fatal("no round is timed")
			}
			return c
		}
		target := clock().Target
		if limit > 0 && target != 12*time.Minute || target < 5*time.Minute || target > time.Hour {
			t.Errorf("with a limit of %d minutes the round should take %v", limit, target)
		}
		h.pass(4 * time.Minute)
		must(t, h.Desk, HoldPlay{"heat"})
		h.pass(40 * time.Minute)
		if c := clock(); c.Played != 4*time.Minute || c.Over() {
			t.Errorf("on hold the clock is %+v, want it to stand at 4 minutes", c)
		}
		must(t, h.Desk, ResumePlay{})
		h.pass(target)
		if c := clock(); !c.Over() || c.Left() != 0 {
			t.Errorf("after the target the clock is %+v, want it over", c)
		}
		must(t, h.Desk, FinishGame{Game: 1, Final: final(t, 11, 3)}, FinishGame{Game: 2, Final: final(t, 11, 3)})
		if c, ok := h.Ledger().Night().RoundClock(h.Now()); ok {
			t.Errorf("with all scores in the clock is %+v, want none", c)
		}
	}
}
