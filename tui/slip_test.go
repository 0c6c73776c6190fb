package tui

import (
	"testing"

	"club/quadrille/session"
)

// TestUndoAsksWhatItTakesBack, where people in the hall have acted on it: a call, a check-in, another court's
// score. Nothing is taken back by the key alone, and esc keeps all.
func TestUndoAsksWhatItTakesBack(t *testing.T) {
	for _, c := range []struct {
		name string
		open func() *stage
		says string
	}{
		{"a call", func() *stage { return called(t, 2, 9) }, "round 1 called"},
		{"a check-in", func() *stage { return newStage(t).people(2, 9, nil) }, "Iris Vale"},
		{"a score, after a look elsewhere", func() *stage { return called(t, 2, 9).press("117", "enter", "b") }, "court 1: 11-7"},
		{"a score of another desk key", func() *stage { return called(t, 2, 9).press("117", "enter", "d", "esc") }, "court 1: 11-7"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := c.open()
			last := s.desk.Ledger().Last()
			s.press("ctrl+z").shows("Undo this?", c.says)
			if s.desk.Ledger().Last() != last {
				t.Fatal("the key alone takes it back")
			}
			if s.press("esc"); s.desk.Ledger().Last() != last {
				t.Fatal("esc takes it back")
			}
			if s.press("ctrl+z", "y"); s.desk.Ledger().Last() != last+1 {
				t.Fatal("y does not take it back")
			}
		})
	}
}

// TestUndoDoesNotAskAboutTheScoreJustTyped, nor about what touches nobody in the hall.
func TestUndoDoesNotAskAboutTheScoreJustTyped(t *testing.T) {
	s := called(t, 2, 9).press("117", "enter", "u").hides("Undo this?")
	if s.final(1) != "" {
		t.Error("the score just typed is not taken back")
	}
	s = called(t, 2, 9).do(session.OpenCourt{}).press("u").hides("Undo this?")
	if len(s.night().Courts) != 2 {
		t.Error("the court is not taken back")
	}
}

// TestANameTypedOnTheWrongScreenGoesToTheFinder, and does no harm.
func TestANameTypedOnTheWrongScreenGoesToTheFinder(t *testing.T) {
	for _, screen := range []string{"c", "b", "r", "s", "h"} {
		s := newStage(t).people(2, 9, nil)
		s.do(session.AddGuest{Name: "Nuria Undset"}).press(screen)
		last := s.desk.Ledger().Last()
		s.press("nuria").shows("Who?", "Name: nuria", "Nuria Undset").press("esc", "und").shows("Name: und")
		if s.desk.Ledger().Last() != last {
			t.Errorf("on screen %s a name does something to the night", screen)
		}
	}
	called(t, 2, 9).press("nnx").hides("Who?") // that is nobody's name
}

// TestOneSignSaysWhatLettersAre, in the same place of every frame.
func TestOneSignSaysWhatLettersAre(t *testing.T) {
	for _, c := range []struct {
		keys   []string
		typing bool
	}{
		{nil, false},
		{[]string{"b"}, false},
		{[]string{"d"}, true},
		{[]string{"11"}, true},
		{[]string{"f"}, true},
		{[]string{"m"}, false},
		{[]string{"o", "e"}, true},
		{[]string{":"}, true},
		{[]string{"?"}, false},
		{[]string{"?", "/"}, true},
		{[]string{"g"}, true},
	} {
		s := called(t, 2, 9).do(session.OpenCourt{}).press(c.keys...)
		for _, size := range append(sizes, [2]int{minWidth, minHeight}) {
			s.resize(size[0], size[1])
			if c.typing {
				s.shows("[TYPING]")
				continue
			}
			s.hides("[TYPING]").shows(" keys ")
		}
	}
}

// TestOneEscLeavesTheDoor, whatever was typed there.
func TestOneEscLeavesTheDoor(t *testing.T) {
	called(t, 2, 9).press("d", "agn", "esc").shows("[Courts]").press("d").hides("agn")
}

// TestARefusalGoesWhenTheNextThingSucceeds, once it was seen.
func TestARefusalGoesWhenTheNextThingSucceeds(t *testing.T) {
	called(t, 2, 9).press("U").shows("! nothing to redo").press("b", "c").shows("! nothing to redo").press("117", "enter").shows("Saved: court 1").hides("nothing to redo")
}
