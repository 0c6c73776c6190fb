package tui

import (
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
)

// TestWhyTheNightMayEnd is said as it is: nothing was played where closing time alone has passed, and who typed it wrong
// changes it from there.
func TestWhyTheNightMayEnd(t *testing.T) {
	s := newStage(t)
	s.people(2, 8, func(o *session.Settings) { o.Closing = s.now.Add(-time.Hour) })
	s.press("c").shows("Next: closing time", "has passed: press n to end the night or play on").hides("all that was planned is played")
	s.press("n").shows("has passed ─", "change the closing time").press("c").shows("> Closing time")
	s.press(s.now.Add(2*time.Hour).Format("15:04"), "enter").shows("Next: press n to call round 1 of")
}

func TestTooFewLeftIsSaid(t *testing.T) {
	s := newStage(t).people(1, 4, nil).press("n").pass(12).press("117", "enter")
	s.do(session.Leave{Person: s.night().Roll[0].Person})
	s.press("c").shows("Next: 3 here, and a game needs 4: press n to end the night or play on")
}

func TestUndoBeforeAnyNightSaysSo(t *testing.T) {
	newStage(t).press("u").shows("! nothing to undo: no night is open").hides("has just been opened")
}

// TestTheWelcomeIsWholeAtEightyColumns: a key that is cut off is no help.
func TestTheWelcomeIsWholeAtEightyColumns(t *testing.T) {
	s := newStage(t).resize(80, 24)
	if flat := flat(s); !strings.Contains(flat, "in five screens. It touches nothing.") {
		t.Errorf("the offer of a walk is cut:\n%s", s.m.View())
	}
	s.people(1, 4, nil).do(session.EndNight{})
	if flat := flat(s); !strings.Contains(flat, "The club knows 4 people") || !strings.Contains(flat, "u opens it again.") {
		t.Errorf("how the night is opened again is cut:\n%s", s.m.View())
	}
}

// TestTheHintsOfAFormAreWholeAtEightyColumns in every field, and the form keeps its height from field to field.
func TestTheHintsOfAFormAreWholeAtEightyColumns(t *testing.T) {
	s := newStage(t).resize(80, 24).press("n")
	bottom := -1
	for range settingsFields(session.Settings{}, s.now) {
		view := s.m.View()
		if strings.Contains(view, "…│") || strings.Contains(view, "… │") {
			t.Errorf("a hint is cut:\n%s", view)
		}
		at := strings.Index(view, "└─")
		if row := strings.Count(view[:max(0, at)], "\n"); bottom >= 0 && row != bottom {
			t.Errorf("the form ends in row %d, and then in %d:\n%s", bottom, row, view)
		} else {
			bottom = row
		}
		s.press("down")
	}
}

// flat is the text of the screen without line breaks and what is set in.
func flat(s *stage) string { return strings.Join(strings.Fields(s.m.View()), " ") }

// TestTheLadderSaysWhoFillsThePlaces of those who sit out: a loser who moves up because of that is no mistake.
func TestTheLadderSaysWhoFillsThePlaces(t *testing.T) {
	s := climbing(t, 3, 18, 1).resize(80, 24).press("s")
	if f := flat(s); !strings.Contains(f, "Sits out round 2: ") || !strings.Contains(f, "; the next move up.") {
		t.Errorf("nothing says why losers move up:\n%s", s.m.View())
	}
}
