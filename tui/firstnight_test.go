package tui

import (
	"fmt"
	"testing"
)

// TestTheFirstNightInTenLines goes through what the README tells somebody who has never used it: line by line, with
// these keys and no others.
func TestTheFirstNightInTenLines(t *testing.T) {
	s := newStage(t)
	s.shows("Press n to open tonight", "w for a walk")
	s.press("n").shows("Open tonight", "Courts", "Closing time").press("down", "ctrl+u", "1", "enter").shows("[Door]")
	for _, name := range []string{"Anna", "Bernd", "Carla", "Doris", "Emil"} {
		s.press(letters(name)...).press("enter")
	}
	s.shows("5 here").press("esc").shows("[Courts]")

	s.press("n").shows("Saved: round 1 called").press("v").shows("to read aloud", " against ").press("esc")
	s.press("1", "1", "7", "enter").shows("Saved: court 1: 11-7")
	s.press("1", "1", " ", "9", "enter").shows("11-9")
	s.press("f", "a", "n", "n").shows("Anna").press("esc")
	s.press("d").press("f", "r", "i", "t", "z", "enter").shows("6 here").press("esc")
	s.press("!").shows("Hold play", "thunder").press("esc")

	for r := s.night().Settings.Rounds; len(s.night().Rounds) < r; {
		s.press("n").shows(fmt.Sprintf("Saved: round %d called", len(s.night().Rounds))).press("1", "1", "7", "enter")
	}
	s.press("n").shows("All that was planned is played", "end the night").press("e").shows("in short")
}

func letters(name string) (keys []string) {
	for _, r := range name {
		keys = append(keys, string(r))
	}
	return keys
}
