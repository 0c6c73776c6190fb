package tui

import (
	"testing"

	"club/quadrille/session"
)

// TestANightsOpeningReminds of usual caution in the form itself, so that it costs no key, until the club switches it off.
func TestANightsOpeningReminds(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}, {200, 60}} {
		s := newStage(t)
		s.resize(size[0], size[1]).press("n").shows("Usual caution", "wet", "eyewear", "water", "qualified people decide", "> Night")
		s.press("enter")
		if s.night() == nil {
			t.Fatal("the reminders want a key of their own")
		}
		s.press("esc", "o", "r").shows("Saved: reminders of usual caution off").press("o").shows("now off").press("esc")
		s.do(session.EndNight{}).press("esc", "n").shows("> Night").hides("Usual caution")
	}
}
