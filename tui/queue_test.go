package tui

import (
	"errors"
	"io"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"go.uber.org/goleak"

	"club/quadrille/session"
	"club/quadrille/tui/theme"
)

// TestKeysWaitForTheDisk: what is typed while a command is being written is handled after it, in
// order, in the state that it leads to.
func TestKeysWaitForTheDisk(t *testing.T) {
	s := called(t, 4, 16)
	s.slow = true
	s.press("117", "enter").press("11 9", "enter").press("down").press("115", "enter")
	if got := len(s.held); got != 1 {
		t.Fatalf("%d commands are on their way at once, want 1", got)
	}
	for range 3 {
		s.release()
	}
	// The cursor goes on to the next game after a score, so that the third one lands on court 4
	// only if the arrow was pressed after the second.
	got := []string{s.final(1), s.final(2), s.final(3), s.final(4)}
	if want := []string{"11-7", "11-9", "11-5", ""}; !slices.Equal(got, want) {
		t.Errorf("scores %q, want %q", got, want)
	}
}

// TestRalliesKeepTheirOrderOnASlowDisk: forty rallies typed in one piece are written one by one.
func TestRalliesKeepTheirOrderOnASlowDisk(t *testing.T) {
	s := called(t, 1, 4).press("enter")
	s.slow = true
	s.press(strings.Repeat("abb", 5))
	for len(s.held) > 0 {
		s.release()
	}
	var got strings.Builder
	for _, r := range s.night().Games[0].Rallies {
		got.WriteString(strings.ToLower(r.Won.String()))
	}
	if want := strings.Repeat("abb", 5); got.String() != want {
		t.Errorf("rallies %s, want %s", got.String(), want)
	}
}

// TestARefusedCommandDoesNotStopWhatWasTypedAfterIt: the queue goes on after an error.
func TestARefusedCommandDoesNotStopWhatWasTypedAfterIt(t *testing.T) {
	s := called(t, 2, 8)
	s.slow = true
	s.press("U").press("117", "enter") // there is nothing to redo
	s.release().shows("nothing to redo").release()
	if s.final(1) != "11-7" {
		t.Errorf("the score after a refused key is %q, want 11-7", s.final(1))
	}
}

// TestQuittingWaitsForWhatWasTypedBefore: q waits in the queue like every key.
func TestQuittingWaitsForWhatWasTypedBefore(t *testing.T) {
	for _, quit := range []string{"q", "ctrl+c"} {
		s := called(t, 2, 8)
		s.slow = true
		s.press("117", "enter").press("11 9", "enter").press(quit)
		s.release()
		if s.quit {
			t.Fatalf("%s ends the desk before the second score is written", quit)
		}
		s.release().release()
		if !s.quit || s.final(1) != "11-7" || s.final(2) != "11-9" {
			t.Errorf("after %s: quit %v, scores %q and %q", quit, s.quit, s.final(1), s.final(2))
		}
	}
}

// TestCtrlCQuitsFromAnywhere: in forms, menus, searches and scores too.
func TestCtrlCQuitsFromAnywhere(t *testing.T) {
	for _, keys := range [][]string{nil, {"d", "agn"}, {"m"}, {"o", "e"}, {"f", "hu"}, {"?"}, {"11"}, {"enter"}, {"t", "enter"}} {
		if s := called(t, 2, 8).press(keys...).press("ctrl+c"); !s.quit {
			t.Errorf("ctrl+c after %q does not quit", keys)
		}
	}
}

// TestTheScreenShowsNothingThatIsNotOnDisk: a score stands on its card only once it is written.
func TestTheScreenShowsNothingThatIsNotOnDisk(t *testing.T) {
	s := called(t, 2, 8)
	s.slow = true
	s.press("117", "enter").hides("11 ✓", "Saved: court 1").release().shows("11 ✓", "Saved: court 1")
}

// stuckDesk is a desk whose disk takes its time: each command waits until it is let go.
type stuckDesk struct {
	*session.Desk
	begun chan struct{} // gets one for each command that has begun
	let   chan struct{} // closed to let all commands go
}

func (d *stuckDesk) Do(c session.Command) (*session.Ledger, error) {
	d.begun <- struct{}{}
	<-d.let
	return d.Desk.Do(c)
}

// TestTheProgramEndsAfterTheWriteInFlight runs the real program: a score and q in one piece end it
// only after the score is written, and nothing is left running.
func TestTheProgramEndsAfterTheWriteInFlight(t *testing.T) {
	defer goleak.VerifyNone(t,
		goleak.IgnoreTopFunction("os/signal.loop"),
		// Bubble Tea leaves a tick to run out by itself.
		goleak.IgnoreTopFunction("github.com/charmbracelet/bubbletea.Every.func1"),
		goleak.IgnoreAnyFunction("github.com/charmbracelet/bubbletea.(*Program).execBatchMsg"))
	s := called(t, 2, 8)
	desk := &stuckDesk{s.desk, make(chan struct{}, 8), make(chan struct{})}
	in, keyboard := io.Pipe()
	ended := make(chan error, 1)
	go func() {
		_, err := Run(t.Context(), desk, Options{Theme: theme.Plain(), NewSeed: func() uint64 { return 1 }}, in, io.Discard)
		ended <- err
	}()
	if _, err := io.WriteString(keyboard, "117\rq"); err != nil {
		t.Fatal(err)
	}
	<-desk.begun
	select {
	case err := <-ended:
		t.Fatalf("the program ended (%v) while the score was being written", err)
	case <-time.After(50 * time.Millisecond):
	}
	close(desk.let)
	if err := errors.Join(<-ended, keyboard.Close(), in.Close()); err != nil {
		t.Fatal(err)
	}
	if s.final(1) != "11-7" {
		t.Errorf("the score typed before q is %q, want 11-7", s.final(1))
	}
}

// TestErrorsStayUntilTheyAreSeen: esc takes an error away, or a later key that saves something, and none is lost
// unseen.
func TestErrorsStayUntilTheyAreSeen(t *testing.T) {
	s := newStage(t).people(2, 8, nil)
	s.press("U").shows("! nothing to redo", "(esc)")
	s.press("d", "esc").hides("nothing to redo").shows("[Courts]")
	s.press("U").press("c", "right", "b", "c").pass(30).shows("nothing to redo")
	s.send(tickMsg{}).shows("nothing to redo")
	s.press("n").hides("nothing to redo").shows("Saved: ")
	s.press("U", "n").shows("2 scores still to come", "(esc; 1 before)")
	s.press("esc").hides("2 scores still").shows("Saved: ")
}

// TestEscGoesBackAtOnce: an old error does not hold it up, or the next key would act in the wrong
// place.
func TestEscGoesBackAtOnce(t *testing.T) {
	s := called(t, 2, 8).press("U").shows("nothing to redo").press("o", "e").shows("Change tonight")
	s.press("esc").hides("Change tonight").hides("nothing to redo")
	s.press("U", "enter").shows("Call:").press("esc").hides("Call:").hides("nothing to redo")
}

// TestALateAnswerIsDropped: a rotation that was worked out for a state that has passed is not
// shown.
func TestALateAnswerIsDropped(t *testing.T) {
	s := newStage(t).people(2, 8, nil)
	s.send(planMsg{key: s.m.planKey + 1, err: errors.New("too late")})
	s.press("r").hides("too late")
	s.send(planMsg{key: s.m.planKey, run: s.m.planRun - 1, err: errors.New("ended early")})
	s.hides("ended early") // the same state came back, and its rotation is being worked out again
	s.send(planMsg{key: s.m.planKey, run: s.m.planRun, err: errors.New("in time")}).shows("in time")
}

// TestNextWaitsForTheRotation: a round is called as the rotation shows it, so n waits while that is
// worked out, and so does what is typed after it.
func TestNextWaitsForTheRotation(t *testing.T) {
	s := newStage(t).people(2, 8, nil)
	seen := s.m.plan.Rotation
	s.m.plan.Ready = false
	s.press("n").press("117", "enter")
	if len(s.night().Rounds) != 0 {
		t.Fatal("a round was called that nobody has seen")
	}
	s.send(planMsg{key: s.m.planKey, rotation: seen})
	if len(s.night().Rounds) != 1 || s.final(1) != "11-7" {
		t.Errorf("%d rounds called and score %q, want 1 and 11-7", len(s.night().Rounds), s.final(1))
	}
	if got, want := s.night().Games[0].A, seen.Rounds[0].Games[0].A; got != want {
		t.Errorf("side A of the first game is %v, but %v was shown", got, want)
	}
}

// TestKeysAfterARoundThatCannotBeCalled: they wait for the rotation, and for no other key.
func TestKeysAfterARoundThatCannotBeCalled(t *testing.T) {
	s := newStage(t).people(2, 8, nil)
	s.m.plan.Ready, s.m.trouble = false, &trouble{command: session.Undo{}, err: &session.KeepError{Err: errors.New("full")}}
	s.press("n").press("s").hides("[Standings]")
	s.send(planMsg{key: s.m.planKey}).shows("[Standings]")
}

// TestInitPlansAndTicks: the desk works the rotation out when it opens.
func TestInitPlansAndTicks(t *testing.T) {
	s := newStage(t).people(1, 5, func(set *session.Settings) { set.Rounds = 1 })
	s.m.planKey = 0
	plan := s.m.replan()
	if plan == nil || s.m.plan.Ready {
		t.Fatal("the desk opens without working out a rotation")
	}
	s.press("r").shows("working out the rotation")
	s.run(plan)
	s.hides("working out the rotation").shows("Round 1")
	s.m.planKey = 0
	if batch, ok := s.m.Init()().(tea.BatchMsg); !ok || len(batch) != 2 {
		t.Errorf("Init starts %v, want a tick and a rotation", batch)
	}
}
