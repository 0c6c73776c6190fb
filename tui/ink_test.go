package tui

import (
	"fmt"
	"strings"
	"testing"
	"unicode"

	"github.com/charmbracelet/x/ansi"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// saysSomething tells whether a line of the screen says something: a letter, a figure, or a mark of who met whom or had
// what. Lines, frames and blanks do not.
func saysSomething(text string) bool {
	return strings.ContainsFunc(ansi.Strip(text), func(r rune) bool {
		return unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune("░▒▓●◌▰▇━", r)
	})
}

// thirtySeven is a night of 37 people with 12 courts, some rounds or calls old.
func thirtySeven(t *testing.T, flow session.Flow) *stage {
	s := newStage(t).people(12, 37, nil)
	if flow == session.Rolling {
		settings := s.night().Settings
		settings.Flow = session.Rolling
		s.do(session.ChangeSettings{Settings: settings}, session.BeginPlay{})
	} else {
		s.do(session.CallRound{Plan: s.m.plan.Rounds})
	}
	for k := range 3 {
		s.pass(11)
		for _, g := range s.night().Running() {
			f, err := g.Rules.Final(11, 2+k, scoring.Played)
			if err != nil {
				t.Fatal(err)
			}
			s.do(session.FinishGame{Game: g.ID, Final: f})
			s.pass(1)
		}
		if flow == session.Rounds {
			s.do(session.CallRound{Plan: s.m.plan.Rounds})
		}
	}
	return s.pass(3).send(tickMsg{}).resize(200, 60)
}

// TestRowsSaySomething: on a wide screen at least 60 of 100 rows of the bench and the rotation carry something that
// matters, in both flows.
func TestRowsSaySomething(t *testing.T) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		s := thirtySeven(t, flow)
		for _, key := range []string{"b", "r"} {
			t.Run(fmt.Sprintf("%s/%s", flow, key), func(t *testing.T) {
				s.press("c", key)
				rows := 0
				for _, text := range s.lines() {
					if saysSomething(text) {
						rows++
					}
				}
				if rows < 36 {
					t.Errorf("%d of 60 rows say something:\n%s", rows, s.m.View())
				}
				t.Logf("%s %s: %d of 60 rows", flow, key, rows)
			})
		}
	}
}
