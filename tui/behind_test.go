package tui

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"club/quadrille/session"
)

// planning is a night of so many people on so many courts at a desk that plans as it does for an organiser.
func planning(t *testing.T, people, courts, rounds int) *stage {
	t.Helper()
	s := newStage(t)
	settings := session.DefaultSettings(7)
	settings.Rounds = rounds
	commands := []session.Command{session.OpenNight{Name: "test night", Settings: settings, Courts: courts}}
	for i := range people {
		commands = append(commands, session.AddGuest{Name: fmt.Sprintf("Guest%02d", i+1)})
	}
	s.do(commands...)
	s.slices = 2
	return s.reopen()
}

// TestAWayIsPickedAtTheDesk: the rotation says that there is a choice, one key opens it, and what is picked is called,
// kept after opening again, and undone.
func TestAWayIsPickedAtTheDesk(t *testing.T) {
	s := planning(t, 16, 2, 8)
	s.press("r")
	s.shows("Planned now: ", " repeats", "m has 2 other ways")
	before := s.m.plan.Rounds
	s.press("m").shows("1  nobody twice running: 2 closed groups, 48 repeats", "as planned now")
	s.press("down", "enter")
	s.shows("Picked: nobody twice running: 2 closed groups, 48 repeats")
	picked := s.m.plan.Rounds
	if reflect.DeepEqual(before, picked) {
		t.Fatal("the rounds are those from before")
	}
	s.press("m").shows("picked").press("esc")
	s.press("u").shows("Planned now: ")
	if !reflect.DeepEqual(s.m.plan.Rounds, before) {
		t.Error("the undo does not bring back what was shown before")
	}
	s.press("U").shows("Picked: nobody twice running")
	if !reflect.DeepEqual(s.m.plan.Rounds, picked) {
		t.Error("the redo does not bring back what was picked")
	}
	s.reopen().press("r").shows("Picked: nobody twice running")
	if !reflect.DeepEqual(s.m.plan.Rounds[0], picked[0]) {
		t.Error("after opening again another round is next")
	}
	s.press("n")
	for k, want := range picked[0].Games {
		if g := s.night().Games[k]; g.Court != want.Court || g.A != want.A || g.B != want.B {
			t.Errorf("called %v v %v, shown %v v %v", g.A, g.B, want.A, want.B)
		}
	}
}

// TestTheRotationImprovesBehindTheScreen: rounds after the next become better until nothing more is found, and are what
// is called; the screen says how far that is.
func TestTheRotationImprovesBehindTheScreen(t *testing.T) {
	s := planning(t, 40, 9, 15)
	s.slow = true
	s.reopen().press("r")
	for range 4 { // the rotation, its ways, and the first pieces
		s.release()
	}
	first := s.m.plan
	s.shows("Still looking: ", "The next round stays as it is")
	for k := 0; len(s.held) > 0; k++ {
		if k > 100 {
			t.Fatal("it never settles")
		}
		s.release()
	}
	s.slow = false
	last := s.m.plan
	s.shows("Settled: ", fmt.Sprintf("→ %d", last.Certificate.MeetingEvenness.Value))
	if last.Certificate.MeetingEvenness.Value >= last.Looking.From || !reflect.DeepEqual(first.Rounds[0], last.Rounds[0]) {
		t.Errorf("%d repeats, %d at first; or another next round", last.Certificate.MeetingEvenness.Value, last.Looking.From)
	}
	s.press("n")
	if got := s.desk.Ledger().Night().Plan; !reflect.DeepEqual(got, last.Rounds[1:]) {
		t.Error("not the improved rounds were called")
	}
}

// TestWhatIsCalledIsWhatWasShown: a find that comes while the call is on its way, or after the night has changed, is
// not taken.
func TestWhatIsCalledIsWhatWasShown(t *testing.T) {
	s := planning(t, 40, 9, 15)
	s.slow = true
	s.reopen()
	for range 2 {
		s.release()
	}
	piece := s.held[0]
	shown := s.m.plan.Rounds
	s.held = nil
	s.press("n")
	call := s.held[0]
	s.held = nil
	s.send(piece())
	if !reflect.DeepEqual(s.m.plan.Rounds, shown) {
		t.Error("the rotation changed while its round was being called")
	}
	s.slow = false
	s.run(call)
	if got := s.desk.Ledger().Night().Plan; !reflect.DeepEqual(got, shown[1:]) {
		t.Error("not what was shown was called")
	}
}

// TestAChangeIsTold: once people were called, an arrival says how many of the coming games stay.
func TestAChangeIsTold(t *testing.T) {
	s := planning(t, 36, 7, 6)
	s.press("n")
	s.send(doneMsg{ledger: s.desk.Ledger()})
	l, err := s.desk.Do(session.AddGuest{Name: "Late"})
	s.send(doneMsg{ledger: l, err: err})
	if !strings.Contains(s.m.change, " of 35 coming games stay; round 2: ") {
		t.Errorf("the message is %q", s.m.notice)
	}
	if strings.Contains(s.m.notice, "coming games") {
		t.Errorf("what nobody saved is called saved: %q", s.m.notice)
	}
	s.press("r").shows("Changed: ", "of 35 coming games stay")

	// What was done meanwhile did not change the games, and does not get the blame.
	l, err = s.desk.Do(session.AddGuest{Name: "Later"})
	s.slow = true
	s.send(doneMsg{ledger: l, err: err})
	s.slow = false
	answers := s.held
	s.held = nil
	s.send(doneMsg{ledger: l, notice: "something else"})
	for _, answer := range answers {
		s.run(answer)
	}
	if !s.m.plan.Ready {
		t.Fatal("the rotation never comes")
	}
	if s.m.change != "" {
		t.Errorf("%q is said of something else", s.m.change)
	}
}
