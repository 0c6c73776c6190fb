package tui

import (
	"strings"
	"testing"

	"club/quadrille/session"
)

// TestTheEmergencyCardIsOneKeyAway on every screen, with a night or without one, while play is held, and while an earlier
// night is read, which had another card.
func TestTheEmergencyCardIsOneKeyAway(t *testing.T) {
	s := newStage(t).press("C").shows("not written yet", "emergency number").press("w").press(strings.Split("12MillLane", "")...).press("enter")
	s.shows("12MillLane", "Saved: emergency card written").press("esc").hides("12MillLane")
	s.people(2, 10, nil)
	for _, screen := range []string{"d", "c", "b", "r", "s", "h"} {
		key := "C"
		if s.press("esc", screen); screen == "d" {
			key = "f4"
		}
		s.press(key).shows("12MillLane").press("esc").hides("12MillLane")
	}
	s.press("c", "!", "l", "C").shows("12MillLane", "qualified").press("esc").shows("Go indoors")
	s.do(session.ResumePlay{}, session.EndNight{}, session.WriteCard{Card: session.EmergencyCard{Address: "9YardRoad"}})
	s.press("esc", "E", "enter", "C").shows("9YardRoad").hides("12MillLane")
	checkReplay(t, s)
}
