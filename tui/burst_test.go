package tui

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
)

// TestGluedKeysCountKeyByKey: a terminal may deliver several keys in one read, and Bubble Tea then
// makes one message of them.
func TestGluedKeysCountKeyByKey(t *testing.T) {
	t.Run("a score", func(t *testing.T) {
		s := called(t, 2, 8)
		s.press("117", "enter")
		if got := s.final(1); got != "11-7" {
			t.Errorf("117 and enter give %q, want 11-7", got)
		}
	})
	t.Run("rallies", func(t *testing.T) {
		s := called(t, 2, 8).press("enter").press("aab")
		if got := len(s.night().Games[0].Rallies); got != 3 {
			t.Errorf("three rallies in one piece count as %d", got)
		}
		s.shows("Call: 0 - 2 - 1")
	})
	t.Run("a search", func(t *testing.T) {
		s := newStage(t).people(2, 10, nil).press("d").press("agn").shows("Find or add: agn", "Agnes Vale").hides("Bram Okoro")
		s.press("es").shows("Find or add: agnes")
	})
	t.Run("keys of the desk", func(t *testing.T) {
		s := newStage(t).people(2, 10, nil).do(session.OpenCourt{}, session.OpenCourt{}, session.OpenCourt{}).press("uuu")
		if got := len(s.night().Courts); got != 2 {
			t.Errorf("three undos in one piece leave %d of 5 courts, want 2", got)
		}
	})
	t.Run("a finder opened and used", func(t *testing.T) {
		called(t, 2, 8).press("fhug").shows("Who?", "Name: hug", "Hugo Vale").hides("Iris Vale")
	})
}

// TestLettersThatCameWithEscCount: esc and letters in one read look like letters with alt.
func TestLettersThatCameWithEscCount(t *testing.T) {
	alt := func(letters string) tea.KeyMsg {
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(letters), Alt: true}
	}
	t.Run("from the rally board to the door", func(t *testing.T) {
		called(t, 2, 8).press("enter").shows("Call: 0 - 0 - 2").send(alt("dagn")).shows("[Door]", "Find or add: agn")
	})
	t.Run("a menu is left", func(t *testing.T) {
		called(t, 2, 8).press("m").shows("walkover").send(alt("h")).shows("[History]").hides("walkover")
	})
	t.Run("where text is typed alt moves by words", func(t *testing.T) {
		called(t, 2, 8).press("f", "iris vale").shows("Name: iris vale").send(alt("b")).shows("Name: iris vale")
	})
}

// TestABurstThatOpensAMenuDropsTheRest: one stroke must not open a menu and choose from it.
func TestABurstThatOpensAMenuDropsTheRest(t *testing.T) {
	for _, c := range []struct{ name, opens, takes, shows string }{
		{"a hold", "!", "l", "Hold play: why?"},
		{"a walkover", "m", "a", "walkover to"},
		{"a court closed", "m", "c", "close this court"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := called(t, 2, 8)
			before := s.desk.Ledger().Last()
			s.press(c.opens + c.takes).shows(c.shows)
			if s.desk.Ledger().Last() != before {
				t.Errorf("%q has done something", c.opens+c.takes)
			}
			s.press(c.takes)
			if s.desk.Ledger().Last() == before {
				t.Errorf("%q does nothing though the menu is open", c.takes)
			}
		})
	}
}

// TestABurstIsDroppedAlone: what came in another read after it still counts.
func TestABurstIsDroppedAlone(t *testing.T) {
	s := called(t, 2, 8)
	s.slow = true
	s.press("117", "enter")                                 // waits for the disk
	s.press("!l").press("esc").press("11 9").press("enter") // a menu opened by a burst and closed again
	s.release()
	for len(s.held) > 0 {
		s.release()
	}
	if s.final(1) != "11-7" || s.final(2) != "11-9" || s.night().Hold != nil {
		t.Errorf("scores %q and %q, hold %v", s.final(1), s.final(2), s.night().Hold)
	}
}

// TestPastedTextGoesIntoTextFieldsOnly: a paste may hold anything, so it is never taken for keys.
func TestPastedTextGoesIntoTextFieldsOnly(t *testing.T) {
	paste := func(text string) tea.KeyMsg {
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true}
	}
	s := called(t, 2, 8)
	before := s.desk.Ledger().Last()
	for _, text := range []string{"u", "q", "n", "11 7", "!l", "a", "x"} {
		s.send(paste(text))
	}
	s.press("enter").send(paste("aaa")).send(paste("a")).press("esc") // on the board of one game
	s.press("m").send(paste("a")).press("esc")                        // on a menu
	if s.desk.Ledger().Last() != before || s.quit || len(s.m.dialogs) > 0 {
		t.Errorf("pasted text was taken for keys: %v", s.desk.Ledger().Actions()[len(s.desk.Ledger().Actions())-1])
	}
	s.press("d").send(paste("Zoe Zimmer")).shows("Find or add: Zoe Zimmer", `add "Zoe Zimmer" as a guest`)
	s.press("esc", "esc", "f").send(paste("hugo")).shows("Name: hugo")
	s.press("esc", "o", "e").send(paste("xyz"))
	s.press("esc").press("d", "ctrl+o").send(paste("/tmp/people.csv")).shows("/tmp/people.csv")
}
