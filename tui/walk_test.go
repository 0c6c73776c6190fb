package tui

import (
	"testing"
)

// TestTheWalkShowsANightInFiveScreens, which are those of the desk, and touches nothing of the club.
func TestTheWalkShowsANightInFiveScreens(t *testing.T) {
	s := newStage(t).shows("Press w for a walk").press("w")
	for _, want := range [][]string{
		{"1 of 5", "People come in", "Saved: Quinn Ashby checked in"},
		{"2 of 5", "The round is called", "round 1 called"},
		{"3 of 5", "Scores come in", "Saved: court 2"},
		{"4 of 5", "When do I play", "Iris Quell"},
		{"5 of 5", "The standings are live", "[Standings]"},
	} {
		checkFrame(t, s.m)
		s.shows(want...).press("enter")
	}
	s.hides("of 5").shows("No night is open")
	if s.desk.Ledger().Last() != 0 {
		t.Errorf("the walk has written %d events", s.desk.Ledger().Last())
	}
	s.press("w", "enter", "enter", "left").shows("2 of 5", "round 1 called").press("esc").hides("of 5")
}

// TestTheWalkIsOfferedToANewClubOnly, and to everybody from the pages for newcomers, at any size.
func TestTheWalkIsOfferedToANewClubOnly(t *testing.T) {
	s := called(t, 2, 9)
	last := s.desk.Ledger().Last()
	for _, size := range append(sizes, [2]int{minWidth, minHeight}) {
		s.resize(size[0], size[1]).press("t", "w").shows("1 of 5")
		checkFrame(t, s.m)
		s.press("enter", "enter", "enter", "enter").shows("5 of 5")
		checkFrame(t, s.m)
		s.press("enter")
	}
	if s.desk.Ledger().Last() != last {
		t.Error("the walk has done something to the night")
	}
	s.press("117", "enter", "117", "enter", "o", "x").hides("Press w for a walk")
}
