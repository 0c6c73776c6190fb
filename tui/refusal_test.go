package tui

import (
	"testing"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// TestARefusedFormGoesWhereItIsWrong: the cursor goes to the field that the reason names, or else to the only one that
// was changed, and what is typed then replaces it.
func TestARefusedFormGoesWhereItIsWrong(t *testing.T) {
	s := newStage(t)
	s.press("n").press("down", "x").press("down", "down", "down", "enter").shows(`! courts: "x" is no number`, "> Courts")
	s.press("3", "enter").shows("[Door]")
	s.press("esc", "o", "e").press("down", "down", "down", "down", "down", "9", "9", "down", "down", "enter").shows("! a night has 1 to 60 rounds, not 99", "> Rounds")
	s.press("7", "enter").shows("Saved: settings")
	if got := s.night().Settings.Rounds; got != 7 {
		t.Errorf("%d rounds", got)
	}
}

// TestAClosedCourtSaysSo where a score is typed or its board is asked for.
func TestAClosedCourtSaysSo(t *testing.T) {
	s := called(t, 2, 4).do(session.CloseCourt{Court: "2"})
	for _, key := range []string{"1", "enter"} {
		s.press("c", "g", "2", "enter", key).shows("! court 2 is closed: arrows choose another, m o opens it").press("esc")
	}
}

// TestNothingIsOfferedToUndoWhereNothingWasDone, and a ladder is not said to be looked for.
func TestNothingIsOfferedToUndoWhereNothingWasDone(t *testing.T) {
	s := newStage(t)
	s.hides("u undo").press("u").shows("! nothing to undo")
	s.do(session.OpenNight{Name: "n", Settings: session.DefaultSettings(1), Courts: 1}).press("esc").hides("u undo").do(session.OpenCourt{})
	if why := s.m.noUndo(); why != "" {
		t.Errorf("a court that was added cannot be undone: %s", why)
	}
	ladder := newStage(t)
	ladder.slices = 3
	ladder.reopen().people(2, 10, func(s *session.Settings) { s.Format = scheduler.Ladder })
	ladder.press("r").hides("Still looking", "Settled")
}

// TestARetiredGameSaysWhoRetired by name, also in the history.
func TestARetiredGameSaysWhoRetired(t *testing.T) {
	s := called(t, 1, 4).press("c", "9", "5", "r", "b", "enter").shows("9-5 Agnes Vale & Dario Vale v Bram Vale & Cleo Vale (Bram Vale & Cleo Vale", "retired)")
	s.press("h").shows("retired)")
}

// TestTheWalkBeginsWithoutWhatWasRefusedBefore: esc ends the walk then, and not the refusal.
func TestTheWalkBeginsWithoutWhatWasRefusedBefore(t *testing.T) {
	newStage(t).press("u").shows("! nothing to undo").press("w").shows("1 of 5").hides("nothing to undo").press("esc").shows("No night is open").hides("1 of 5")
}
