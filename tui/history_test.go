package tui

import (
	"maps"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"club/quadrille/session"
)

func init() {
	maps.Copy(moments, map[string]func(t *testing.T) *stage{
		"history, folded": func(t *testing.T) *stage { return rallied(t).press("h", "down") },
		"history, opened": func(t *testing.T) *stage { return rallied(t).press("h", "down", "enter") },
	})
}

// rallied is a night in which two games are scored rally by rally at once, and somebody has gone to rest since.
func rallied(t testing.TB) *stage {
	s := called(t, 2, 9).press("c", "home", "enter", "aab", "esc", "right", "enter", "bb", "esc", "left", "enter", "a", "backspace", "b", "esc")
	return s.do(session.Rest{Person: s.night().Bench()[0].Person})
}

// TestRalliesAreOneLine that enter opens and folds again.
func TestRalliesAreOneLine(t *testing.T) {
	const listed = "19:00      " // before a rally that stands in a line of its own
	s := rallied(t).press("h").shows("+ court 1: 4 rallies, ", "+ court 2: 2 rallies, ", "rests").hides(listed)
	s.press("down").shows("enter list the rallies").press("enter").shows("− court 1: 4 rallies", listed, "undid: court 1: rally", "enter fold the rallies")
	if k := strings.Count(s.m.View(), listed); k != 6 {
		t.Errorf("%d lines of rallies are listed, want 4 that stand, 1 undone and its undo:\n%s", k, s.m.View())
	}
	s.press("down", "enter").shows("undo just this").press("esc", "up", "enter").hides(listed)
	s.press("esc", "h").hides(listed)
}

// TestBeforeAnUndo the history says what would be another way, and a refusal stands beside the choice.
func TestBeforeAnUndo(t *testing.T) {
	s := called(t, 2, 9).press("117", "enter", "h", "enter").shows("Without it: court 1: the score 11-7 is gone", "goes on", "places: ")
	s.press("esc", "down", "enter").shows("round 1 called", "It cannot be undone now:", "that first.").press("u").shows("rests on it")
	if len(s.night().Rounds) != 1 {
		t.Error("the call was undone under its score")
	}
	s.press("esc", "esc", "esc", "c", "u").shows("Undo this?", "the score 11-7 is gone").press("y")
	if s.final(1) != "" {
		t.Error("yes did not undo the score")
	}
}

// TestGoldenHistory draws the rallies folded and opened, and what would be another way.
func TestGoldenHistory(t *testing.T) {
	for name, keys := range map[string][]string{"folded": {"h"}, "opened": {"h", "down", "enter"}, "before an undo": {"h", "enter"}} {
		t.Run(name, func(t *testing.T) {
			s := rallied(t).press(keys...)
			checkFrame(t, s.m)
			golden.RequireEqual(t, s.m.View())
		})
	}
}
