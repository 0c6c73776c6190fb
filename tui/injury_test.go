package tui

import (
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// TestAnInjuryFromTheCourt: five keys stop the game and ask what becomes of it; what is decided is done, and the hurt person
// is not called until back.
func TestAnInjuryFromTheCourt(t *testing.T) {
	s := called(t, 2, 10)
	hurt := s.night().Games[0].A[1]
	s.press("home", "m", "i").shows("Court 1: who is hurt?", "local emergency", "Qualified people and local rules decide")
	s.press("2", "o").press(strings.Split("ankle", "")...).press("enter").
		shows("Court 1 stands: what now?", "Qualified people", "send on a sub", "the team retires", "left out of the table", "ankle")
	s.press("z").pass(3).send(tickMsg{}).shows("! court 1:", "is hurt, 3 min ago")
	s.press("a", "enter").shows("what now?").press("g")
	n := s.night()
	if g := n.Games[0]; g.Final == nil || g.Final.How() != scoring.Retired || n.Attending(hurt).State != session.Resting {
		t.Fatalf("the game came to %v, and the hurt person is %s", g.Final, n.Attending(hurt).State)
	}
	s.hides("is hurt, ")
	checkReplay(t, s)
}

// TestAHeadInjuryIsOutForTonight: nothing at the desk checks the person in, until somebody types who cleared it.
func TestAHeadInjuryIsOutForTonight(t *testing.T) {
	s := called(t, 2, 10)
	hurt := s.night().Games[0].A[0]
	name := s.desk.Ledger().Club().Name(hurt)
	state := func() session.Presence { return s.night().Attending(hurt).State }
	s.press("home", "m", "i", "1", "h", "enter").shows("Suspected head injury: out for tonight", "Qualified people decide", "plays on (out for tonight)")
	s.press("p")
	if g := s.night().Games[0]; !g.Running() || g.Pause == nil {
		t.Fatal("who is out for tonight plays on")
	}
	s.press("x", "enter")
	if g := s.night().Games[0]; g.Has(hurt) || !g.Running() {
		t.Fatal("no sub was sent on")
	}
	s.press("d").press(strings.Split(name, "")...).shows("out for tonight").press("enter").shows("until a qualified person clears it")
	s.press("esc", "esc", "c", "f").press(strings.Split(name, "")...).press("enter").shows("out for tonight", "qualified people decide").press(" ")
	if state() != session.Gone {
		t.Fatal("the space bar checks in who is out for tonight")
	}
	s.press("i").shows("stays out for tonight").press("c").shows("Only a qualified person", "local rules").press("enter").shows("name the qualified person")
	s.press(strings.Split("Vale", "")...).press("enter")
	if state() != session.Gone {
		t.Fatal("a clearance checks somebody in by itself")
	}
	s.shows("cleared by Vale").press(" ")
	if state() != session.Here {
		t.Fatal("who was cleared cannot be checked in")
	}
	checkReplay(t, s)
}
