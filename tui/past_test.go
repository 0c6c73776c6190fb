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
		"earlier standings": func(t *testing.T) *stage { return reading(t) },
		"earlier rotation":  func(t *testing.T) *stage { return reading(t).press("r") },
		"earlier history":   func(t *testing.T) *stage { return reading(t).press("h") },
		"earlier timeline":  func(t *testing.T) *stage { return reading(t).press("h", "t") },
		"earlier person":    func(t *testing.T) *stage { return reading(t).press("enter") },
		"in short":          func(t *testing.T) *stage { return busy(t, 4, 16).press("h", "y") },
	})
}

// twoNights is a second night under way, after one of two rounds.
func twoNights(t testing.TB) *stage {
	s := newStage(t).people(2, 9, nil)
	for range 2 {
		s.do(session.CallRound{Plan: s.m.plan.Rounds}).pass(11)
		for i, g := range s.night().Running() {
			s.do(session.FinishGame{Game: g.ID, Final: final(t, s, 11, 3+i)})
		}
	}
	s.do(session.EndNight{}).pass(7 * 24 * 60)
	people := s.desk.Ledger().Club().People
	s.do(session.OpenNight{Name: "Second night", Settings: session.DefaultSettings(7), Courts: 2})
	for _, p := range people {
		s.do(session.CheckIn{Person: p.ID})
	}
	return s.press("c", "n").shows("round 1 called")
}

// reading is the second night, with the first one read.
func reading(t testing.TB) *stage { return twoNights(t).press("E", "enter") }

// TestAnEarlierNightIsReadAndNothingElse: its screens, clearly marked; esc returns to where one was.
func TestAnEarlierNightIsReadAndNothingElse(t *testing.T) {
	s := twoNights(t).press("b", "E").shows("night of 20 November 2026").press("enter")
	last, first := s.desk.Ledger().Last(), s.desk.Ledger().Club().Nights[0]
	marked := func(what ...string) {
		t.Helper()
		s.shows(append(what, " night of 20 November 2026 ", "reading only")...)
	}
	leader := session.Places(s.desk.Ledger().Club(), first)[0].Name
	marked("[Standings]", leader, "nothing can be changed there: esc returns to tonight")
	s.press("r")
	marked("[Rotation]", "Round 1", "played")
	s.press("h")
	marked("[History]", "night ended")
	s.press("t")
	marked("The night by its courts", "11-3 ▇")
	s.press("esc", "y")
	marked("in short", "9 people came; 4 games in 2 rounds on 2 courts")
	s.press("esc", "s", "enter")
	marked(leader, "the night is over")
	s.press("esc", "h", "enter", "u").shows("is only read: esc returns to tonight").press("esc")
	for _, key := range []string{"n", "u", "U", "o", "f", "k"} {
		s.press(key).shows("is only read: esc returns to tonight").press("esc")
	}
	if s.desk.Ledger().Last() != last {
		t.Error("something was written while an earlier night was read")
	}
	s.press("s", "esc").hides("reading only").shows("[Bench]")
	s.press("E", "enter").shows("reading only").press("c").hides("reading only").shows("[Courts]", "round 1: arrows")
}

// TestPlayIsHeldWhateverIsRead: safety goes before.
func TestPlayIsHeldWhateverIsRead(t *testing.T) {
	s := reading(t).press("!", "l")
	if s.night().Hold == nil {
		t.Errorf("play is not held:\n%s", s.m.View())
	}
}

// TestTheNightInShortAfterItsEnd: ending the night shows it, and esc goes on.
func TestTheNightInShortAfterItsEnd(t *testing.T) {
	s := played(t).press("n", "e").shows("in short", "5 people came; 1 game in 1 round on 1 court", "Fairness").press("end").shows("the closest: ")
	s.press("esc").shows("No night is open.")
}

// TestGoldenEarlier draws an earlier night, and a night in short.
func TestGoldenEarlier(t *testing.T) {
	for name, open := range map[string]func() *stage{
		"standings": func() *stage { return reading(t) },
		"history":   func() *stage { return reading(t).press("h") },
		"in short":  func() *stage { return busy(t, 12, 37).press("h", "y") },
	} {
		s := open()
		for _, size := range sizes {
			t.Run(fmt.Sprintf("%s/%dx%d", name, size[0], size[1]), func(t *testing.T) {
				s.resize(size[0], size[1])
				checkFrame(t, s.m)
				golden.RequireEqual(t, s.m.View())
				if name != "in short" && !strings.Contains(s.m.View(), "night of 20 November 2026") {
					t.Error("the earlier night is not marked")
				}
			})
		}
	}
	if s := reading(t); s.m.active != ui.Standings {
		t.Error("an earlier night does not begin with its standings")
	}
}
