package tui

import (
	"errors"
	"strings"
	"testing"

	"club/quadrille/session/paper"
	"club/quadrille/tui/ui"
)

// TestThePalettePrints: a sheet of the night is found by two letters, has the rotation that is shown, and goes to a
// file that the organiser names; what the font lacks and what goes wrong is told.
func TestThePalettePrints(t *testing.T) {
	s := called(t, 2, 9)
	var to, on string
	s.m.options.Papers = []string{"a4", "letter"}
	var sheet paper.Sheet
	fail, lack := error(nil), []string(nil)
	s.m.options.Print = func(path, size string, made paper.Sheet, names []string) ([]string, error) {
		to, on, sheet = path, size, made
		return lack, fail
	}
	s.press(":", "print rotation", "enter").shows("Print rotation", "rotation.pdf")
	s.press("wall.pdf", "enter").shows("sheet written to wall.pdf").hides("Print rotation")
	if to != "wall.pdf" || len(sheet.Blocks) != s.night().Settings.Rounds {
		t.Errorf("%q has %d of %d rounds", to, len(sheet.Blocks), s.night().Settings.Rounds)
	}
	var text strings.Builder
	if err := paper.Text(&text, sheet); err != nil || !strings.Contains(text.String(), "Round 1") {
		t.Errorf("%v: %s", err, text.String())
	}
	if on != "a4" {
		t.Errorf("it is printed on %q", on)
	}
	s.press(":", "print personal", "enter").shows("Paper", "a4").press("down", "right", "enter")
	if on != "letter" {
		t.Errorf("letter was chosen, and it is printed on %q", on)
	}
	if s.press(":", "print met", "enter").shows("letter").press("enter"); on != "letter" {
		t.Errorf("the paper of the last time is forgotten: %q", on)
	}
	lack = []string{"李 Wei"}
	s.press(":", "print slips", "enter", "enter").shows("it has □ in 李 Wei")
	fail = errors.New("wall.pdf is there already")
	s.press(":", "print met", "enter", "enter").shows("nothing printed: wall.pdf is there already")
	s.press("esc", "esc")
	s.m.options.Print = nil
	s.press(":", "print rotation").shows("Nothing here has these letters")
	s.m.active = ui.Courts
}
