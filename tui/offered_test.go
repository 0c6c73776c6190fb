package tui

import (
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// moments are states of the desk in which keys are offered, each made anew for every key.
var moments = map[string]func(t *testing.T) *stage{
	"door":                       func(t *testing.T) *stage { return called(t, 2, 9).press("117", "enter", "d") },
	"door, name typed":           func(t *testing.T) *stage { return called(t, 2, 9).press("d", "ag") },
	"courts":                     func(t *testing.T) *stage { return called(t, 2, 9).press("117", "enter", "c").pass(1).send(tickMsg{}) },
	"score typed":                func(t *testing.T) *stage { return called(t, 2, 9).press("c", "117") },
	"court looked for":           func(t *testing.T) *stage { return called(t, 2, 9).press("c", "m", "+", "g") },
	"board":                      func(t *testing.T) *stage { return called(t, 2, 9).press("c", "enter", "aab") },
	"board, asking":              func(t *testing.T) *stage { return called(t, 2, 9).press("c", "enter", "F", "a") },
	"board, over":                func(t *testing.T) *stage { return called(t, 2, 9).press("c", "enter", "aaaaaaaaaaa") },
	"bench":                      func(t *testing.T) *stage { return called(t, 2, 11).press("117", "enter", "b") },
	"rotation, rolling and wide": func(t *testing.T) *stage { return rolling(t).resize(200, 60).press("r") },
	"rotation":                   func(t *testing.T) *stage { return called(t, 2, 9).press("r") },
	"standings": func(t *testing.T) *stage {
		return called(t, 4, 30).press("117", "enter", "117", "enter", "117", "enter", "117", "enter", "s")
	},
	"league":         func(t *testing.T) *stage { return called(t, 2, 9).press("117", "enter", "s", "v") },
	"history":        func(t *testing.T) *stage { return called(t, 2, 9).press("117", "enter", "h") },
	"court menu":     func(t *testing.T) *stage { return called(t, 2, 9).press("c", "m") },
	"finder":         func(t *testing.T) *stage { return called(t, 2, 9).press("f") },
	"person form":    func(t *testing.T) *stage { return called(t, 2, 9).press("d", "ag", "right", "e") },
	"settings":       func(t *testing.T) *stage { return called(t, 2, 9).press("o", "s") },
	"will it fit?":   func(t *testing.T) *stage { return called(t, 2, 9).press("r", "p") },
	"drill":          func(t *testing.T) *stage { return called(t, 2, 9).press("t", "d", "x") },
	"rules card":     func(t *testing.T) *stage { return called(t, 2, 9).press("t", "c") },
	"help":           func(t *testing.T) *stage { return called(t, 2, 9).press("?") },
	"help, filter":   func(t *testing.T) *stage { return called(t, 2, 9).press("?", "/", "co") },
	"attention":      func(t *testing.T) *stage { return called(t, 2, 9).pass(30).send(tickMsg{}).press("a") },
	"welcome":        func(t *testing.T) *stage { return newStage(t) },
	"walk":           func(t *testing.T) *stage { return called(t, 2, 9).press("t", "w", "enter") },
	"walk's end":     func(t *testing.T) *stage { return called(t, 2, 9).press("t", "w", "enter", "enter", "enter", "enter") },
	"held":           func(t *testing.T) *stage { return called(t, 3, 14).press("!", "l").press("enter") },
	"held, all told": func(t *testing.T) *stage { return called(t, 2, 9).press("!", "h", "a") },
	"may play go on": func(t *testing.T) *stage { return called(t, 2, 9).press("!", "l", "!") },
	"by hand":        func(t *testing.T) *stage { return called(t, 2, 9).press("r", "x") },
	"its cost":       func(t *testing.T) *stage { return called(t, 2, 9).press("r", "+", "hug", "enter", "iri", "enter") },
	"who met whom":   func(t *testing.T) *stage { return called(t, 2, 9).press("r", "v") },
	"wide screen":    func(t *testing.T) *stage { return called(t, 2, 9).resize(200, 60).press("r") },
	"palette":        func(t *testing.T) *stage { return called(t, 2, 9).press(":") },
}

// offers are the actions whose keys are offered now.
func (s *stage) offers() []ui.Action {
	if d := s.m.dialog(); d != nil {
		return d.Actions(s.m.dialogContext(d))
	}
	return s.m.screenActions(s.m.context())
}

// trace is all that a key can change for somebody who looks on, and for the night.
func (s *stage) trace() string {
	return s.m.View() + "\n" + strings.Repeat("event ", int(s.desk.Ledger().Last())) + s.refusal()
}

func (s *stage) refusal() string {
	if s.m.wrong == nil {
		return ""
	}
	return s.m.wrong.Error()
}

// TestOfferedKeysDoSomething: of each key that is offered at least one does what can be seen or is saved, or
// says why not.
func TestOfferedKeysDoSomething(t *testing.T) {
	for name, open := range moments {
		t.Run(name, func(t *testing.T) {
			for _, a := range open(t).offers() {
				if a.Quiet || len(a.Key.Keys()) == 0 {
					continue
				}
				tried := slices.ContainsFunc(a.Key.Keys(), func(k string) bool {
					s := open(t)
					before := s.trace()
					s.press(k)
					return s.quit || s.trace() != before
				})
				if !tried {
					t.Errorf("%v is offered for %q and does nothing", a.Key.Keys(), a.Key.Help().Desc)
				}
			}
		})
	}
}

// TestKeysThatDoSomethingAreOffered: no key acts without being named by the footer, the help page or a box.
func TestKeysThatDoSomethingAreOffered(t *testing.T) {
	var all []string
	for r := ' '; r <= '~'; r++ {
		all = append(all, string(r))
	}
	all = append(all, "enter", "esc", "tab", "shift+tab", "up", "down", "left", "right", "home", "end", "pgup", "pgdown", "backspace")
	for _, d := range deskKeys() {
		all = append(all, d.always...)
	}
	for name, open := range moments {
		t.Run(name, func(t *testing.T) {
			s := open(t)
			var known []string
			for _, a := range s.offers() {
				known = append(known, a.Key.Keys()...)
			}
			box := s.m.dialog()
			typing := s.m.typing(s.m.context())
			if box == nil {
				for _, a := range s.m.deskActions(s.m.context()) {
					known = append(known, a.Key.Keys()...)
				}
			}
			if _, ok := box.(interface{ TakesText() bool }); ok {
				typing = true
			}
			if _, anyKey := box.(interface{ AnyKey() bool }); anyKey {
				return // it says that any key closes it
			}
			start := s.trace()
			before := start
			for _, k := range all {
				if k == "ctrl+c" || k == "ctrl+k" {
					continue // quit, and open the palette, from everywhere, as the help page says
				}
				text := len(k) == 1 || k == "backspace" || k == "left" || k == "right" || k == "home" || k == "end"
				if slices.Contains(known, k) || typing && text {
					continue
				}
				s.press(k)
				if after := s.trace(); after != before || s.quit {
					t.Errorf("%q does something and is offered nowhere:\n%s", k, s.m.View())
					s, before = open(t), start // what a key without effect leaves is as good as new
				}
			}
		})
	}
}

// TestAReasonInsteadOfAnAction: a key whose action cannot be done now says why, and does nothing.
func TestAReasonInsteadOfAnAction(t *testing.T) {
	s := called(t, 2, 8).do(session.CloseCourt{Court: "2"})
	last := s.desk.Ledger().Last()
	s.press("b", "l").shows("nobody waits")
	s.press("esc", "c", "end")
	s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("x")})
	if s.desk.Ledger().Last() != last {
		t.Error("a key that had a reason did something")
	}
}
