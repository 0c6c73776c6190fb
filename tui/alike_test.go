package tui

import (
	"os"
	"path/filepath"
	"testing"

	"club/quadrille/session"
)

// TestTheDoorAsksWhoIsNearlyKnown: a guest who is nearly called as somebody of the club may be that person, and one
// key says so.
func TestTheDoorAsksWhoIsNearlyKnown(t *testing.T) {
	s := newStage(t).people(1, 4, nil)
	s.do(session.AddGuest{Name: "Anna Berg"}, session.Leave{Person: "p006"}).press("d")
	s.press("Anna Bergh", "enter").shows("Is Anna Bergh the Anna Berg whom the club knows?", "yes: check Anna Berg in")
	s.press("y").hides("whom the club knows").shows("Anna Berg checked in")
	if n := len(s.desk.Ledger().Club().People); n != 5 {
		t.Errorf("the club has %d people", n)
	}
	s.press("Berg Anna", "enter").shows("Is Berg Anna the Anna Berg", "yes: check Anna Berg in (is here already)").press("esc").hides("whom the club knows")
	s.press("enter", "n").shows("Berg Anna checked in")
	if n := len(s.desk.Ledger().Club().People); n != 6 {
		t.Errorf("the club has %d people", n)
	}
}

// TestAShortNewNameIsNotALongKnownOne: letters scattered over the name of somebody who is not here check nobody in.
func TestAShortNewNameIsNotALongKnownOne(t *testing.T) {
	s := newStage(t).people(1, 4, nil)
	s.do(session.AddGuest{Name: "Bartholomew Featherstonehaugh"}, session.Leave{Person: "p006"}).press("d")
	s.press("Mel", "enter").shows("Mel is new to the club, Mel checked in").hides("Bartholomew Featherstonehaugh checked in")
	s.press("bar", "enter").shows("Bartholomew Featherstonehaugh checked in")
}

// TestARosterAsksWhoIsNearlyKnown: each such line is asked about, and nothing is taken in before the last answer.
func TestARosterAsksWhoIsNearlyKnown(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.csv")
	if err := os.WriteFile(path, []byte("Player,Shoe\nVale Agnes,1\nBram Vaile,2\nCleo Vales,3\nCy Crane,\nCy Krane,\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	open := func() *stage {
		return newStage(t).people(1, 4, nil).press("d", "ctrl+o", path, "enter").shows("Line 2: is Vale Agnes the Agnes Vale whom the club knows?")
	}
	s := open().press("y").shows("Line 3: is Bram Vaile the Bram Vale").press("n").shows("Line 4: is Cleo Vales the Cleo Vale")
	s.press("y").shows("Line 6: is Cy Krane the Cy Crane of line 5?").hides("more to ask about")
	if n := len(s.desk.Ledger().Club().People); n != 4 {
		t.Fatalf("the club has %d people before the last answer", n)
	}
	s.press("y").shows("take one of the lines out").press("n")
	s.shows("How the roster was read", "taken: the column Player for name", "not used: the column Shoe").press("esc").hides("Open a roster")
	if n := len(s.desk.Ledger().Club().People); n != 7 {
		t.Errorf("the club has %d people", n)
	}
	s = open().press("a").shows("How the roster was read")
	if n := len(s.desk.Ledger().Club().People); n != 9 {
		t.Errorf("the club has %d people", n)
	}
	s = open().press("esc", "esc").hides("whom the club knows", "How the roster")
	if n := len(s.desk.Ledger().Club().People); n != 4 {
		t.Errorf("the club has %d people", n)
	}
}

// TestTwoPeopleAreMergedAtTheDoor: the person's menu makes one person of two, those with nearly the same name first, and
// an undo parts them.
func TestTwoPeopleAreMergedAtTheDoor(t *testing.T) {
	s := newStage(t).people(1, 4, nil)
	s.do(session.AddGuest{Name: "Agnes Vaile", Sure: true}).press("d")
	s.press("vaile", "right").shows("m  merge: turns out to be somebody else").press("m").shows("Agnes Vaile is really…", "> Agnes Vale", "nearly the same name")
	s.press("enter").shows("Agnes Vaile and Agnes Vale are one person", "4 here")
	if people := s.desk.Ledger().Club().People; len(people) != 4 {
		t.Errorf("the club has %d people", len(people))
	}
	s.press("ctrl+z", "ctrl+z").shows("undid: Agnes Vaile and Agnes Vale are one person", "5 here")
	s.press("ctrl+n").shows("round 1 called").press("d", "bram", "right", "m", "cleo", "enter").shows("are two people: both were in one game")
}
