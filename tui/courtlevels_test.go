package tui

import "testing"

// TestACourtIsKeptForLevelsAtItsMenu: the form takes two ends, says what is wrong with them, and the menu says what is
// chosen.
func TestACourtIsKeptForLevelsAtItsMenu(t *testing.T) {
	s := called(t, 2, 9).press("c", "m").shows("l for levels: now any level").press("l").shows("Court 1: for which levels?")
	s.press("three", "enter").shows(`! level "three" is no number: write it as 3.5`)
	s.press("ctrl+u", "3,5", "down", "3", "enter").shows("! levels from 3.5 to 3 are none: the lower one comes first")
	s.press("ctrl+u", "5", "enter").shows("Saved: court 1 for levels 3.5 to 5")
	s.press("m").shows("l for levels: now levels 3.5 to 5").press("l").shows("3.5").press("enter").shows("! court 1 is for levels 3.5 to 5 already")
}
