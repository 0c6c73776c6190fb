package tui

import (
	"path/filepath"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// lasts lets work on its way go on for so many seconds.
func (s *stage) lasts(seconds int) *stage {
	s.t.Helper()
	s.now = s.now.Add(time.Duration(seconds) * time.Second)
	return s.send(longMsg{s.m.works})
}

// TestACallThatWaitsForTheRotationCanBeCancelled, and what was typed to come after it is told to be gone.
func TestACallThatWaitsForTheRotationCanBeCancelled(t *testing.T) {
	s := newStage(t).people(4, 16, nil)
	s.m.note(rotationWork, 5*time.Second)
	s.m.plan.Ready, s.m.planBegan = false, s.now
	s.press("n").shows("working out the rotation…").hides("esc cancels")
	s.lasts(2).shows("working out the rotation… 2 s, about 4 s left (esc cancels)")
	s.press("1", "1").shows("2 keys waiting")
	s.lasts(7).shows("working out the rotation… 9 s, 2 keys waiting (esc cancels)")
	s.press("esc").shows("! cancelled: nothing was changed; 2 keys typed meanwhile not taken")
	if s.m.busy || len(s.m.queue) > 0 {
		t.Fatal("keys still wait")
	}
	s.send(planMsg{s.m.planKey, s.m.planRun, session.Rotation{Rounds: []session.PlannedRound{turned(s.night(), 0)}}, nil})
	if len(s.night().Rounds) != 0 {
		t.Fatal("the call that was cancelled is made")
	}
	if s.press("n").shows("round 1 called"); len(s.night().Rounds) != 1 {
		t.Error("the round cannot be called any more")
	}
}

// TestWeighingCanBeCancelled: its result, which comes later, shows nothing.
func TestWeighingCanBeCancelled(t *testing.T) {
	s := called(t, 2, 9)
	last := s.desk.Ledger().Last()
	s.slow = true
	weigh := ui.Weigh{Command: session.PinPartners{A: s.night().Roll[0].Person, B: s.night().Roll[1].Person}}
	s.run(s.m.follow(weigh, nil))
	s.lasts(1).shows("working out what it costs… 1 s (esc cancels)").press("esc").shows("! cancelled: nothing was changed")
	if s.release(); len(s.m.dialogs) > 0 || s.m.busy || s.desk.Ledger().Last() != last {
		t.Fatal("what was cancelled asks all the same")
	}
	s.run(s.m.follow(weigh, nil))
	s.lasts(1)
	if s.release(); len(s.m.dialogs) == 0 {
		t.Error("the next weighing asks nothing")
	}
}

// TestReadingANightCanBeCancelled.
func TestReadingANightCanBeCancelled(t *testing.T) {
	s := twoNights(t).press("E")
	s.slow = true
	s.press("enter").lasts(1).shows("reading the night… 1 s (esc cancels)").press("esc")
	if s.release(); s.m.past != nil {
		t.Error("the night is shown that was not to be read")
	}
	s.slow = false
	s.press("E", "enter").shows("reading only")
}

// TestARosterIsTakenWholeOrNotAtAll: esc before it is written takes nobody in.
func TestARosterIsTakenWholeOrNotAtAll(t *testing.T) {
	s := newStage(t).people(2, 4, nil)
	roster, err := filepath.Glob(filepath.Join("..", "testdata", "*.csv"))
	if err != nil || len(roster) == 0 {
		t.Fatal("no roster")
	}
	s.slow = true
	take := ui.Import{Path: roster[0]}
	s.run(s.m.follow(take, nil))
	s.lasts(1).shows("taking in the roster… 1 s (esc cancels)").press("esc").shows("(ending)")
	if s.release().shows("! cancelled: nothing was changed"); len(s.night().Roll) != 4 || s.m.busy {
		t.Fatalf("%d people on the roll", len(s.night().Roll))
	}
	s.run(s.m.follow(take, nil))
	if s.release(); len(s.night().Roll) == 4 {
		t.Error("nobody is taken in by another try")
	}
	checkReplay(t, s)
}

// TestWhatGoesToTheDiskIsWaitedFor: of a copy is told how long it takes, and esc waits its turn.
func TestWhatGoesToTheDiskIsWaitedFor(t *testing.T) {
	s := called(t, 2, 8)
	s.m.options.Backup = func(string, session.Command) error { return nil }
	s.slow = true
	s.run(s.m.follow(ui.Backup{Path: "copy"}, nil))
	s.lasts(3).shows("writing the copy… 3 s").hides("esc").press("esc").shows("1 key waiting")
	s.release().shows("copy written to copy")
}

// TestLongWorkShowsOverEverything: also over a refusal, which comes back after it.
func TestLongWorkShowsOverEverything(t *testing.T) {
	s := called(t, 2, 8).press("U").shows("nothing to redo")
	s.slow = true
	s.run(s.m.follow(ui.Weigh{Command: session.PinPartners{A: s.night().Roll[0].Person, B: s.night().Roll[1].Person}}, nil))
	s.shows("nothing to redo").lasts(1).shows("working out what it costs…").hides("nothing to redo")
}

// TestWorkIsToldAfterAWhile: what begins work also asks to be told, and only work that still goes on is.
func TestWorkIsToldAfterAWhile(t *testing.T) {
	s := called(t, 2, 8)
	s.m.patience = time.Millisecond
	cmd := s.m.begin(work{what: "counting"}, nil)
	out := cmd()
	if batch, several := out.(tea.BatchMsg); several {
		out = batch[0]()
	}
	msg, ok := out.(longMsg)
	if !ok || msg.run != s.m.works {
		t.Fatalf("%#v", msg)
	}
	s.m.patience = 0
	s.m.finish(msg.run)
	if s.send(msg); s.m.long() {
		t.Error("work that is done is told to go on")
	}
}
