package tui

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"testing"

	"club/quadrille/session"
	"club/quadrille/session/paper"
)

// printable lets the desk print to nowhere.
func (s *stage) printable() *stage {
	s.m.options.Print = func(string, string, paper.Sheet, []string) ([]string, error) { return nil, nil }
	return s
}

// TestPrintedRoundsStayAsPrinted: what stands on paper does not become better behind the screen, and is what is called,
// round after round; who leaves changes it, and then better rounds are looked for again.
func TestPrintedRoundsStayAsPrinted(t *testing.T) {
	s := planning(t, 40, 9, 15).printable()
	s.slow = true
	s.reopen().printable().press("r")
	for range 4 { // the rotation, its ways, and the first pieces
		s.release()
	}
	s.shows("Still looking: ")
	s.m.options.Print = func(string, string, paper.Sheet, []string) ([]string, error) {
		return nil, errors.New("the disk is full")
	}
	s.press(":", "print rotation", "enter", "enter")
	for s.m.busy {
		s.release()
	}
	s.shows("Still looking: ").press("esc", "esc", "esc").press("r")
	s.printable().press(":", "print rotation", "enter", "enter")
	for s.m.busy {
		s.release()
	}
	s.shows("As printed: ", "The rounds stay so")
	printed := slices.Clone(s.m.plan.Rounds)
	for k := 0; len(s.held) > 0; k++ {
		if k > 5 {
			t.Fatal("it goes on looking")
		}
		s.release()
	}
	s.slow = false
	if !reflect.DeepEqual(s.m.plan.Rounds, printed) {
		t.Fatal("the rounds are not those that were printed")
	}
	s.press(":", "results from paper", "enter")
	for round := range 2 {
		s.shows(fmt.Sprintf("Results from paper: round %d", round+1))
		for range printed[round].Games {
			s.press("11 7", "down")
		}
		s.press("enter").shows(fmt.Sprintf("Saved: 9 results of round %d, from paper", round+1))
		for k, want := range printed[round].Games {
			g := s.night().Game(s.night().Rounds[round].Games[k])
			if g.Court != want.Court || g.A != want.A || g.B != want.B || g.Final == nil {
				t.Errorf("round %d: called %v v %v, printed %v v %v", round+1, g.A, g.B, want.A, want.B)
			}
		}
		if !reflect.DeepEqual(s.m.plan.Rounds, printed[round+1:]) {
			t.Fatalf("after round %d the rounds to come are not those that were printed", round+1)
		}
	}
	s.press("esc", "r").shows("As printed: ")
	before := s.m.plan.Rounds
	s.do(session.Leave{Person: printed[2].Games[0].A[0]}).press("r")
	if reflect.DeepEqual(s.m.plan.Rounds, before) || s.m.asPrinted() {
		t.Error("somebody who left still plays as printed")
	}
}

// TestResultsFromPaperAreTypedAtTheDesk: a field for each court that has no result, in one go; what is wrong is told and
// nothing is saved; void, walkovers and games that ended early are taken; the next round follows, also one that was not called; what was
// called is undone action by action.
func TestResultsFromPaperAreTypedAtTheDesk(t *testing.T) {
	s := called(t, 2, 9)
	games := func() (over int) {
		for _, g := range s.night().Games {
			if g.Final != nil {
				over++
			}
		}
		return over
	}
	letters := paper.MarkOf(s.desk.Ledger().Club(), s.night(), s.night().Rounds[0])
	s.press(":", "results from paper", "enter").shows("Results from paper: round 1", letters, "Court 1", "Court 2", "11 7, or 9-6 timed")
	s.press("enter").shows("type the score of a court")
	s.press("11 7", "down", "77 3", "enter").shows("! round 1, court 2: 77-3")
	if games() != 0 {
		t.Fatal("half of it is saved")
	}
	s.press("esc").press(":", "results from paper", "enter").press("down", "void", "enter").shows("Saved: 1 result of round 1, from paper")
	s.shows("Results from paper: round 1", "Court 1").hides("Court 2  ")
	next := s.m.plan.Rounds[0]
	s.press("9-6 timed", "enter").shows("Results from paper: round 2").press("walkover a", "down", "3 11", "enter")
	if games() != 4 || len(s.night().Rounds) != 2 {
		t.Errorf("%d games of %d rounds are over", games(), len(s.night().Rounds))
	}
	for k, want := range next.Games {
		if g := s.night().Game(s.night().Rounds[1].Games[k]); g.Court != want.Court || g.A != want.A || g.B != want.B {
			t.Errorf("called %v v %v, shown %v v %v", g.A, g.B, want.A, want.B)
		}
	}
	s.shows("Results from paper: round 3").press("esc", "u", "y")
	if games() != 3 {
		t.Errorf("%d games are over after an undo", games())
	}
}

// TestRollingNightsHaveNoPaper: their games follow one another, so nothing is asked by rounds.
func TestRollingNightsHaveNoPaper(t *testing.T) {
	s := newStage(t)
	s.people(2, 9, func(x *session.Settings) { x.Flow = session.Rolling })
	s.press(":", "results from paper").shows("Nothing here has these letters")
}
