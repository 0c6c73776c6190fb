package tui

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"

	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

func init() {
	maps.Copy(moments, map[string]func(t *testing.T) *stage{
		"reading out":           func(t *testing.T) *stage { return called(t, 3, 14).press("v", " ", "up") },
		"reading out, in lines": func(t *testing.T) *stage { return called(t, 12, 50).press("v") },
		"nothing to read out":   func(t *testing.T) *stage { return newStage(t).people(2, 9, nil).press("c", "v") },
	})
}

// TestReadingOut: one key a court, the next one comes up, and the last one leads back to the hall.
func TestReadingOut(t *testing.T) {
	s := called(t, 3, 14).shows("called and not read out yet: courts 1, 2, 3").press("a").shows("> called and not read out yet: courts 1, 2, 3").press("enter").shows("Round 1, to read aloud", "0 of 3 read", "Sits out:")
	for _, g := range s.night().Running() {
		s.shows(s.m.names.FullTeam(g.A), s.m.names.FullTeam(g.B))
	}
	s.shows("read court 1 aloud").press(" ").shows("read court 2 aloud", "1 of 3 read")
	s.press("enter").shows("read court 3 aloud", "2 of 3 read").press(" ")
	if s.m.active != ui.Courts {
		t.Error("after the last court the hall does not come back")
	}
	s.hides("not read out").press("v").shows("3 of 3 read", "all is read out")
}

// TestMarksStandAsLongAsTheCall: leaving and coming back keeps them, a substitution asks for that court again,
// and a call that was undone has none.
func TestMarksStandAsLongAsTheCall(t *testing.T) {
	s := called(t, 2, 9).press("v", " ", "esc", "s", "c", "v").shows("1 of 2 read", "read court 2 aloud")
	g, bench := s.night().Running()[0], s.night().Bench()[0]
	s.do(session.Substitute{Game: g.ID, Out: g.A[1], In: bench.Person})
	s.shows("0 of 2 read", s.m.names.Full(bench.Person)).press("up").shows("read court 1 aloud")
	s.press(" ", "esc").shows("not read out yet: court 2").press("u", "y").press("u", "y").press("n", "v").shows("0 of 2 read")
}

// TestMissingAtTheCall: x asks who did not come, and the sub is read out.
func TestMissingAtTheCall(t *testing.T) {
	s := called(t, 2, 9).press("v", "down", "x").shows("Court 2: who did not come?")
	absent, bench := s.night().Running()[1].A[0], s.night().Bench()[0].Person
	s.press("1", "x", "enter")
	if g := s.night().Running()[1]; g.Has(absent) || !g.Has(bench) {
		t.Fatalf("court 2 has %v", g.Players())
	}
	if a := s.night().Attending(absent); a.State != session.Resting {
		t.Errorf("who did not come is %s", a.State)
	}
	s.shows(s.m.names.Full(bench), "read court 2 aloud")
}

// TestReadingOutTheNewFour: in the rolling flow just what was called anew.
func TestReadingOutTheNewFour(t *testing.T) {
	s := newStage(t).people(3, 20, func(set *session.Settings) { set.Flow = session.Rolling }).press("n", "v").shows("0 of 3 read")
	s.press(" ", " ", " ").pass(12).press("c", "home", "117", "enter", "v").shows("The newest call", "0 of 1 read")
	g := s.night().Game(4)
	s.shows(s.m.names.FullTeam(g.A)).hides(s.m.names.FullTeam(s.night().Game(2).A))
}

// TestReadingOutIsNeverOnlyAMark: what begins a name goes to the finder here too.
func TestReadingOutIsNeverOnlyAMark(t *testing.T) {
	called(t, 2, 9).press("v").press("agn").shows("Who?")
}

// TestClicksOnTheCall: a click chooses a court, a second one marks it.
func TestClicksOnTheCall(t *testing.T) {
	for _, size := range sizes {
		s := called(t, 12, 50).resize(size[0], size[1]).press("v")
		name := s.m.names.FullTeam(s.night().Running()[2].A)
		s.clickOn(name).shows("read court 3 aloud").clickOn(name).shows("1 of 12 read", "read court 4 aloud")
	}
}

// TestGoldenReadingOut draws the page on three terminals and on the smallest.
func TestGoldenReadingOut(t *testing.T) {
	for _, n := range []struct{ courts, people int }{{3, 14}, {12, 50}} {
		for _, size := range append(sizes[:len(sizes):len(sizes)], [2]int{minWidth, minHeight}) {
			t.Run(fmt.Sprintf("%d courts/%dx%d", n.courts, size[0], size[1]), func(t *testing.T) {
				s := called(t, n.courts, n.people).resize(size[0], size[1]).press("v", " ")
				checkFrame(t, s.m)
				golden.RequireEqual(t, s.m.View())
				if k := strings.Count(s.m.View(), "against"); k == 0 {
					t.Error("nobody is read out")
				}
			})
		}
	}
}
