package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/theme"
)

// TestGoldenPages draws the pages where names are longest, and where courts and people are most: each on several
// terminals one below the other in one file, the last time without a glyph of ours beyond ASCII.
func TestGoldenPages(t *testing.T) {
	ladder := func(t *testing.T) *stage {
		s := newStage(t)
		settings := session.DefaultSettings(7)
		settings.Format = scheduler.Ladder
		s.do(session.OpenNight{Name: "Club night", Settings: settings, Courts: 2})
		for _, name := range longNames {
			s.do(session.AddGuest{Name: name})
		}
		s.do(session.CallRound{}).pass(9)
		return s.do(session.FinishGame{Game: s.night().Running()[0].ID, Final: final(t, s, 11, 7)})
	}
	longest := func(t *testing.T) *stage { return named(t, session.Rounds) }
	largest := func(t *testing.T) *stage { return secondNight(t, session.Rounds, 24, 200) }
	for _, n := range []struct {
		name  string
		open  func(*testing.T) *stage
		sizes [][2]int
		pages [][]string // a name and the keys that lead there
	}{
		{"longest names", longest, sizes, [][]string{
			{"calling", "c", "v"},
			{"timeline", "h", "t"},
			{"in short", "h", "y"},
			{"rounds", "r"},
			{"map", "r", "v"},
			{"by hand", "r", "x", "p"},
			{"person", "f", "jos", "enter"},
			{"bench", "b"},
			{"courts", "c"},
			{"hold", "!", "l"},
		}},
		{"longest names on a ladder", ladder, sizes, [][]string{{"standings", "s"}}},
		{"24 courts, 200 people", largest, [][2]int{{80, 24}, {200, 60}}, [][]string{
			{"calling", "c", "v"},
			{"timeline", "h", "t"},
			{"in short", "h", "y"},
			{"rounds", "r"},
			{"map", "r", "v"},
			{"person", "f", "bar", "enter"},
			{"courts", "c"},
			{"standings", "s"},
			{"hold", "!", "l"},
		}},
	} {
		s := n.open(t)
		records := s.desk.Ledger().Last()
		for _, keys := range n.pages {
			page, keys := keys[0], keys[1:]
			t.Run(n.name+"/"+page, func(t *testing.T) {
				s.t = t
				var frames strings.Builder
				draw := func(size [2]int, look *theme.Theme, what string) {
					s.m.options.Theme = look
					s.reopen()
					s.m.options.Theme = look
					s.resize(size[0], size[1]).press("esc", "esc").press(keys...)
					checkFrame(t, s.m)
					fmt.Fprintf(&frames, "%dx%d%s\n%s\n", size[0], size[1], what, s.m.View())
					if s.desk.Ledger().Last() != records { // the hold
						s.do(session.Undo{})
						records = s.desk.Ledger().Last()
					}
				}
				for _, size := range n.sizes {
					draw(size, theme.Plain(), "")
				}
				draw(n.sizes[0], theme.Of(theme.Choice{Profile: termenv.Ascii, ASCII: true}), ", ASCII")
				golden.RequireEqual(t, frames.String())
			})
		}
	}
}
