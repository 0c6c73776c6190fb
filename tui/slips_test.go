package tui

import (
	"testing"
	"time"

	"club/quadrille/session"
)

// What organisers in a hurry did wrong, and what must not come of it.

func TestAnAnsweredNameDoesNotStickToTheNext(t *testing.T) {
	s := newStage(t).roster(4, "roster18.csv").press("d", "agnes", "enter").shows("! Agnes Vale is here already")
	s.press("zed quint").shows(`add "zed quint" as a guest`).press("enter").shows("Saved: zed quint")
	s.press("bram", "right").shows("rest a while").press("r").press("maud").shows("> [x] Maud Ember")
}

func TestAScoreTypedOnTheBoardIsThatCourts(t *testing.T) {
	s := called(t, 2, 8).press("enter").shows("Call:").press("117").shows("Court 1 score: 117_").press("enter")
	if got := s.final(1); got != "11-7" {
		t.Errorf("court 1 has %q, want 11-7", got)
	}
}

func TestAScoreRightAfterACallOfItsOwnIsAskedBack(t *testing.T) {
	s := newStage(t).people(1, 6, func(n *session.Settings) { n.Flow = session.Rolling }).press("n")
	s.pass(12).press("117", "enter").shows("Saved: court 1: 11-7")
	s.press("119", "enter").shows("! this game on court 1 has only begun")
	if got := s.final(2); got != "" {
		t.Errorf("the game that has only begun got %q", got)
	}
	s.press("enter")
	if got := s.final(2); got != "11-9" {
		t.Errorf("enter again saves %q, want 11-9", got)
	}
}

func TestEndingWithGamesOnCourtIsAskedBack(t *testing.T) {
	s := called(t, 2, 8).press("o", "x").shows("2 games on court", "play on")
	if s.night() == nil {
		t.Fatal("the night was ended without being asked")
	}
	s.press("s").shows("in short", "night ended, games voided: 2").press("u", "y")
	if n := s.night(); n == nil || len(n.Running()) != 2 {
		t.Error("undo does not open the night again as it was")
	}
}

// TestEndingBeforeTheEndIsAskedBack: with rounds left, or before closing time where courts call by themselves. Nothing is
// asked once all is played.
func TestEndingBeforeTheEndIsAskedBack(t *testing.T) {
	scored := func(s *stage) *stage {
		for range s.night().Running() {
			s.press("117", "enter")
		}
		return s
	}
	s := scored(called(t, 2, 8)).press("o", "x").shows("End the night?", "7 of 8 rounds are left.", "play on").press("enter").shows("End the night?").press("e")
	if s.night() != nil {
		t.Fatal("the night was not ended when it was said again")
	}
	s = scored(called(t, 2, 8)).press("o", "x", "p")
	if s.night() == nil {
		t.Error("the night was ended though play was to go on")
	}
	if played(t).press("o", "x").night() != nil {
		t.Error("with nothing left it is asked all the same")
	}
	s = newStage(t).people(1, 4, func(set *session.Settings) { set.Rounds = 8 })
	scored(s.press("n").pass(12)).do(session.Leave{Person: s.night().Roll[0].Person}).press("n").shows("end the night: 7 of 8 rounds are left")
	s = newStage(t).people(2, 8, func(set *session.Settings) {
		set.Flow, set.Closing = session.Rolling, evening.Add(time.Hour)
	})
	s.press("n").pass(12).press("o", "x").shows("2 games on court", "Closing time is 20:00, in 48 min.")
	s.press("esc", "esc").do(session.EndCalls{}).press("o", "x").shows("2 games on court").hides("Closing time is")
}

func TestAGameSetAsideOnTheBoardStaysInViewUntilItIsLeft(t *testing.T) {
	s := called(t, 2, 8).press("enter", "aab", "m", "c", "s").shows("Game over: void")
	s.press("a", "b", "left").shows("Game over: void").hides("[Bench]").press("enter").hides("Game over")
	if got := s.night().Count(session.Here); got != 8 {
		t.Errorf("%d people are in the rotation, want 8", got)
	}
}
