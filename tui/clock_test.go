package tui

import (
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
)

// look lets the desk look at its clock, as it does every ten seconds.
func (s *stage) look() *stage { return s.resize(80, 24) }

// A clock that is put back is told once, stays told until it is read, and takes no minute from the
// courts; scores are saved with one enter.
func TestAClockThatIsPutBack(t *testing.T) {
	s := newStage(t).people(3, 18, func(o *session.Settings) {
		o.Flow, o.Closing = session.Rolling, evening.Add(150*time.Minute)
	}).press("n").pass(12)
	s.press("home").shows(" 12′")
	s.now = s.now.Add(-3 * time.Hour)
	s.look()
	s.shows("! the laptop's clock was put back 3 h; waits and games are counted by the time that has passed; closing time is 18:30 by it now (o, then e, changes it)", " 12′", "16:12")
	s.press("1", "1", "7", "enter")
	if s.final(1) != "11-7" {
		t.Fatalf("the score is not saved with one enter:\n%s", s.m.View())
	}
	s.shows("Saved: court 1: ")
	s.press("esc").shows(" ! the laptop's clock was put back 3 h").press("a", "x", "esc").hides("clock")
	s.pass(5).look()
	s.hides("clock").shows(" 17′")
	s.press("b").shows("17 min").press("h").shows("the laptop's clock was put back 3 h")
	s.reopen().hides("clock was")
}

// A game that the clock calls as the one before ends is no shorter than it is: the desk asks about a score
// only if it is typed within a minute of the call.
func TestAScoreTypedRightAfterTheCallIsAskedAboutWhateverTheClockSays(t *testing.T) {
	s := newStage(t).people(1, 8, func(o *session.Settings) { o.Flow = session.Rolling }).press("n").pass(12)
	s.press("1", "1", "7", "enter")
	s.now = s.now.Add(-3*time.Hour + 2*time.Second)
	s.look().press("esc")
	s.press("1", "1", "8", "enter").shows("has only begun")
	s.press("esc", "esc").pass(2).press("1", "1", "8", "enter")
	if s.final(2) != "11-8" {
		t.Fatalf("two minutes after the call the score is not saved with one enter:\n%s", s.m.View())
	}
}

// Without a tick the next key brings the clock's move along, and is not lost.
func TestAKeyAfterTheClockWasSetIsNotLost(t *testing.T) {
	s := called(t, 2, 9).pass(10).look()
	s.now = s.now.AddDate(0, 0, -1)
	s.press("1", "1", "7", "enter")
	if s.final(1) != "11-7" {
		t.Fatalf("the score is not saved:\n%s", s.m.View())
	}
	s.shows(" ! the laptop's clock was put back 1 day").press("h").shows("put back 1 day")
}

// A disk that refuses does not make the clock a matter of the organiser's; the next action tells it.
func TestTheClockOnADiskThatRefuses(t *testing.T) {
	s, disk := troubled(t)
	disk.full = true
	s.now = s.now.Add(-3 * time.Hour)
	s.look().look().hides("not saved")
	disk.full = false
	s.press("1", "1", "7", "enter")
	if s.final(1) != "11-7" {
		t.Fatalf("the score is not saved:\n%s", s.m.View())
	}
	s.press("esc", "h").shows("put back 3 h")
}

// A clock that is behind the newest record is doubted before the night is opened.
func TestAClockBehindTheLastNightIsDoubted(t *testing.T) {
	s := newStage(t)
	s.now = evening.AddDate(1, 0, 1)
	s.people(1, 4, nil).do(session.EndNight{})
	s.now = evening
	s.reopen().shows("! the laptop's clock says 20 Nov 2026; the last night was 21 Nov 2027")
	s.now = evening.AddDate(1, 0, 8)
	if s.reopen(); strings.Contains(s.m.View(), "clock says") {
		t.Errorf("a clock that is right is doubted:\n%s", s.m.View())
	}
}
