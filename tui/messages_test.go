package tui

import "testing"

// TestAMessageToTheHall is posted by a key and from the palette, stands on the desk with its end, is ended by
// a key, and an undo brings it back.
func TestAMessageToTheHall(t *testing.T) {
	s := underWay(t)
	s.press("M").shows("Message to the hall").press("pizza at eight", "down", "eight", "enter").shows("write a time such as 20:45").press("esc")
	s.press("M", "pizza at eight", "down", "23:59", "enter").shows("Saved: message: pizza at eight", "in the hall until 23:59: pizza at eight")
	s.press("M").shows("new message", "end: pizza at eight").press("1").shows("Saved: message ended").hides("in the hall until")
	s.press("u").shows("in the hall until 23:59: pizza at eight")
	s.press(":", "message").shows("message to the hall").press("esc", "esc", "a").shows("messages").press("enter").shows("end: pizza at eight").press("n").shows("one line of at most 60 characters")
	s.press("court 3 is wet", "enter").shows("+1").press("h").shows("message: court 3 is wet", "message: pizza at eight")
}

// TestNamesInTheHall: the options say how the hall sees people, and the door how it sees one of them.
func TestNamesInTheHall(t *testing.T) {
	s := underWay(t)
	s.press("o").shows("names in the hall: now first names and initials").press("n", "3").shows("Saved: the hall sees the names that people chose")
	s.press("o", "n", "3").shows("the hall sees these already").press("esc", "esc", "esc")
	plan := s.desk.Ledger().DrawKey()
	s.press("d", "agnes", "right", "e").shows("Chosen name", "In the hall").press("up", "right", "enter")
	p, _ := s.desk.Ledger().Club().Named("Agnes Vale")
	if !p.Hidden || s.desk.Ledger().DrawKey() != plan {
		t.Errorf("%+v, and the rotation is another: %v", p, s.desk.Ledger().DrawKey() != plan)
	}
}
