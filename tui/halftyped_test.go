package tui

import "testing"

// ctrl+z takes back what is half typed, and only with nothing half typed what is saved.
func TestUndoTakesBackTheHalfTypedFirst(t *testing.T) {
	for name, c := range map[string]struct {
		keys  []string // leave something half typed
		shown string   // while it is
	}{
		"a score":            {[]string{"1", "1"}, "Court 2 score: 11"},
		"how a game ended":   {[]string{"9", "4", "t"}, "Court 2 score: 94"},
		"a question":         {[]string{"enter", "F", "right"}, "lose it?"},
		"a question, by one": {[]string{"enter", "F", "right", "1"}, "lose it?"},
		"a name at the door": {[]string{"d", "z", "o"}, "Find or add: zo"},
	} {
		t.Run(name, func(t *testing.T) {
			s := called(t, 2, 8).press("1", "1", "7", "enter").pass(1).press(c.keys...).shows(c.shown)
			before := s.log.Last()
			s.press("ctrl+z").hides(c.shown)
			if s.log.Last() != before || s.final(1) != "11-7" {
				t.Fatalf("something saved was undone:\n%s", s.m.View())
			}
			if s.press("ctrl+z"); s.m.dialog() != nil { // another screen was shown since: it asks
				s.press("y")
			}
			if s.final(1) != "" {
				t.Errorf("the second ctrl+z did not undo the score:\n%s", s.m.View())
			}
		})
	}
}

// ctrl+y brings nothing back while something is half typed.
func TestRedoWaitsForTheHalfTyped(t *testing.T) {
	for name, keys := range map[string][]string{"a score": {"1", "1"}, "a question": {"enter", "F", "right"}} {
		t.Run(name, func(t *testing.T) {
			s := called(t, 2, 8).press("1", "1", "7", "enter", "u").pass(1).press(keys...).press("ctrl+y")
			if s.final(1) != "" {
				t.Errorf("the score came back:\n%s", s.m.View())
			}
		})
	}
}
