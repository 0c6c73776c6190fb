package tui

import (
	"strings"
	"testing"

	"club/quadrille/session"
)

// pressAndCount presses keys and counts the keys that are no letters of a name.
func pressAndCount(s *stage, keys ...string) (count int) {
	for _, k := range keys {
		s.press(k)
		if len(k) != 3 { // three letters of a name
			count++
		}
	}
	return count
}

// TestTheseTwoNextInFewKeys: from the courts, two people are partners of the next round after at most eight keys and
// three letters of each name, and what that costs is shown before it is done.
func TestTheseTwoNextInFewKeys(t *testing.T) {
	s := called(t, 2, 11).press("c")
	before := s.desk.Ledger().Last()
	keys := pressAndCount(s, "r", "+", "hug", "enter", "iri", "enter")
	s.shows("Hugo & Iris next, as partners?", "Round 2, court", "Nobody sits out twice running", "meeting evenness", "bound")
	if s.desk.Ledger().Last() != before {
		t.Fatal("something was done before it was taken")
	}
	keys += pressAndCount(s, "enter")
	s.shows("by hand", "Saved: Hugo Vale & Iris Vale as partners in round 2")
	n := s.night()
	if keys > 8 || len(n.Pins) != 1 || !n.Pins[0].A.Has("p009") || !n.Pins[0].A.Has("p010") {
		t.Errorf("%d keys, pins %+v", keys, n.Pins)
	}
	s.press("u")
	if len(s.night().Pins) != 0 {
		t.Errorf("the undo leaves %+v", s.night().Pins)
	}
}

// TestTwoPlayersExchangedInSixKeys and three letters of each name.
func TestTwoPlayersExchangedInSixKeys(t *testing.T) {
	s := called(t, 2, 9).press("c")
	one, other := s.night().Games[0].A[0], s.night().Games[1].B[0]
	letters := func(id session.PersonID) string { return strings.ToLower(s.desk.Ledger().Club().Name(id)[:3]) }
	keys := pressAndCount(s, "r", "x", "e", letters(one), "enter", letters(other), "enter")
	s.shows("Exchange", "Nobody sits out twice running")
	keys += pressAndCount(s, "enter")
	if n := s.night(); keys > 6 || n.Playing(one).Court != "2" || n.Playing(other).Court != "1" {
		t.Errorf("%d keys, and they play on %s and %s", keys, n.Playing(one).Court, n.Playing(other).Court)
	}
}

// TestPutFirstFromTheBench and from the page of the person, noted as the organiser's decision.
func TestPutFirstFromTheBench(t *testing.T) {
	for _, rolling := range []bool{false, true} {
		s := called(t, 2, 12)
		if rolling {
			s = newStage(t).people(2, 14, nil)
			settings := s.night().Settings
			settings.Flow = session.Rolling
			s.do(session.ChangeSettings{Settings: settings}, session.BeginPlay{})
		}
		s.press("b", "end")
		bench := s.night().Bench()
		last := bench[len(bench)-1].Person
		s.press("p").shows("Put ", "first?").press("enter").shows("put first by the organiser's decision")
		if p, ok := s.night().PinOf(last); !ok || p.A[0] != last {
			t.Fatalf("pins %+v", s.night().Pins)
		}
		s.resize(120, 36).press("h").shows("put first by the organiser's decision").resize(80, 24)
		s.press("b", "end", "p").shows("pinned already").press("esc", "u").press("enter")
		if len(s.night().Pins) != 0 {
			t.Fatalf("the undo leaves %+v", s.night().Pins)
		}
		s.press("b", "end", "enter", "p").shows("first?").press("enter")
		if _, ok := s.night().PinOf(last); !ok {
			t.Fatal("it does not work from the page")
		}
	}
}

// TestARefusalByHandSaysWhy on the line of refusals, and nothing is done.
func TestARefusalByHandSaysWhy(t *testing.T) {
	s := called(t, 2, 9)
	rests := s.night().Games[0].A[0]
	s.do(session.Rest{Person: rests}).press("r", "+", strings.ToLower(s.desk.Ledger().Club().Name(rests)[:3]), "enter", "iri")
	before := s.desk.Ledger().Last()
	s.press("enter").shows("rests: check in first")
	if s.desk.Ledger().Last() != before {
		t.Error("something was done")
	}
}

// TestSwapsAndCourtsByHand go by the menu, and stand on the rotation with a mark.
func TestSwapsAndCourtsByHand(t *testing.T) {
	s := called(t, 3, 14).resize(120, 36).press("r")
	games := s.m.plan.Rounds[0].Games
	name := func(id session.PersonID) string { return strings.ToLower(s.desk.Ledger().Club().Name(id)) }
	s.press("x", "s").shows("Swap in round 2: who?").press(name(games[0].A[0]), "enter", name(games[1].A[0]), "enter").shows("Swap").press("enter")
	if p := s.night().Pins; len(p) != 2 || p[0].A[0] != games[1].A[0] {
		t.Fatalf("%+v", p)
	}
	s.shows("by hand").press("x", "p").shows("Which game?").press("1").shows("To which court?").press("2").shows("court 1 to court 3?").press("enter")
	if p := s.night().Pins[len(s.night().Pins)-1]; p.Court != "1" && p.Court != "3" {
		t.Fatalf("%+v", s.night().Pins)
	}
	s.press("x", "m", "1", "1").shows("Move the game to court 2?").press("enter")
	if g := s.night().Games[0]; g.Court != "2" {
		t.Errorf("game 1 is on court %s", g.Court)
	}
	s.press("x", "k", "1").shows("pinned already").press("esc")
}

// TestWhoIsSwappedOutSitsOutByHand: the bench says so of whoever gives the place up, and so does the reason why.
func TestWhoIsSwappedOutSitsOutByHand(t *testing.T) {
	s := called(t, 3, 14).resize(120, 36).press("r")
	round, bench := s.m.plan.Rounds[0], s.night().Bench()
	name := func(id session.PersonID) string { return strings.ToLower(s.desk.Ledger().Club().Name(id)) }
	out := bench[0].Person // sits out now, and would play next
	s.press("x", "s").shows("Swap in round 2: who?").press(name(out), "enter", name(round.Out[0]), "enter").shows("Swap", "sits out").press("enter")
	if pin, ok := s.night().PinOf(out); !ok || !pin.Out {
		t.Fatalf("pins %+v", s.night().Pins)
	}
	s.shows("◆ Cleo O. by hand")
	s.press("b", "home").shows("out, by hand").press("y").shows("sits out next by the organiser's decision")
	s.press("b", "home", "p").shows("sits out): release that first").press("esc", "u").press("b").hides("out, by hand")
	if len(s.night().Pins) != 0 {
		t.Errorf("the undo leaves %+v", s.night().Pins)
	}
}
