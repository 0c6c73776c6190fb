package tui

import (
	"testing"
	"time"
	_ "time/tzdata" // the zone of this test, on a machine that has none

	"club/quadrille/session"
)

// The settings can be looked at and changed at any time of a night: a closing time that is left as it
// was stays the same moment, before midnight and after, and on the days on which the clock changes.
func TestAClosingTimeStaysWhereItIs(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ opened, closing, opensForm time.Time }{
		{time.Date(2026, 11, 20, 19, 0, 0, 0, berlin), time.Date(2026, 11, 20, 23, 45, 0, 0, berlin), time.Date(2026, 11, 21, 0, 10, 0, 0, berlin)},
		{time.Date(2026, 10, 25, 0, 30, 0, 0, berlin), time.Date(2026, 10, 25, 0, 30, 0, 0, time.UTC), time.Date(2026, 10, 25, 0, 40, 0, 0, time.UTC).In(berlin)}, // 2:30, the first, seen at 2:40, the first
		{time.Date(2026, 3, 28, 20, 0, 0, 0, berlin), time.Date(2026, 3, 29, 3, 30, 0, 0, berlin), time.Date(2026, 3, 29, 3, 10, 0, 0, berlin)},
	} {
		s := newStage(t)
		s.now = c.opened
		s.people(1, 4, func(o *session.Settings) { o.Closing = c.closing })
		s.now = c.opensForm
		s.press("o", "e")
		for range 5 {
			s.press("down")
		}
		s.press("backspace", "9", "enter")
		n := s.night()
		if n.Settings.Rounds != 9 || !n.Settings.Closing.Equal(c.closing) {
			t.Errorf("opened at %v, closing %v became %v with %d rounds:\n%s", c.opensForm, c.closing, n.Settings.Closing, n.Settings.Rounds, s.m.View())
		}
	}
}
