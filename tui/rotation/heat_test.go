package rotation

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// met is the screen turned over to who met whom.
func met(c ui.Context) *Rotation {
	r := New()
	r.Survey(c)
	ui.Press(r, c, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("v")})
	return r
}

// TestPartnersAboveAndOpponentsBelow: of two called rounds and two planned ones with the same games, and of the called
// ones alone. How often is told by shape.
func TestPartnersAboveAndOpponentsBelow(t *testing.T) {
	c := evening(t, 2)
	r := met(c)
	row := func(name string) string {
		for _, l := range r.Lines(c) {
			if text := ansi.Strip(l); len(text) > 2 && strings.HasPrefix(text[1:], name+" ") {
				return strings.Join(strings.Fields(text[heatName:]), " ")
			}
		}
		return ""
	}
	for _, want := range []struct{ name, row string }{
		{"A", "╲ ▓▓ · · · · · · ·"}, // A and B are partners, and met C and D as opponents
		{"B", "· ╲ · · · · · · ·"},
		{"C", "▓▓ ▓▓ ╲ ▓▓ · · · · ·"},
		{"I", "· · · · · · · · ╲"},
	} {
		if got := row(want.name); got != want.row {
			t.Errorf("%s: %q, want %q", want.name, got, want.row)
		}
	}
	ui.Press(r, c, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("w")})
	if got := row("C"); got != "▒▒ ▒▒ ╲ ▒▒ · · · · ·" {
		t.Errorf("played alone: %q", got)
	}
	if text := strings.Join(r.Lines(c), "\n"); !strings.Contains(text, "A met 3 of 8, more than once: B 2, C 2, D 2; not yet: E, F, G, H, I") {
		t.Errorf("the row of the cursor is not said:\n%s", text)
	}
}

// TestTheMapScrolls to everybody of 60 people, in both directions, in frames of any size.
func TestTheMapScrolls(t *testing.T) {
	c := evening(t, 0)
	r := met(c)
	f := &r.facts
	f.people = nil
	for range 60 {
		f.people = append(f.people, c.Ledger.Club().People[0].ID)
	}
	f.played, f.ahead, f.apart, f.always = make([]tally, 3600), make([]tally, 3600), make([]bool, 3600), make([]bool, 3600)
	for _, size := range [][2]int{{40, 8}, {80, 18}, {120, 30}} {
		c.Width, c.Height = size[0], size[1]
		for range 70 {
			ui.Press(r, c, tea.KeyMsg{Type: tea.KeyDown})
			ui.Press(r, c, tea.KeyMsg{Type: tea.KeyRight})
		}
		lines := r.Lines(c)
		text := ansi.Strip(strings.Join(lines, "\n"))
		if len(lines) > c.Height || strings.Count(text, ">") != 1 || !strings.Contains(text, "╲") {
			t.Errorf("%v: the end of the map is\n%s", size, text)
		}
		for _, l := range lines {
			if ansi.StringWidth(l) > c.Width {
				t.Errorf("%v: a line of %d cells", size, ansi.StringWidth(l))
			}
		}
	}
}

// TestBarsHaveTheirBoundAsANotch, and say what is proved.
func TestBarsHaveTheirBoundAsANotch(t *testing.T) {
	c := evening(t, 1)
	k := scheduler.Certificate{MeetingEvenness: scheduler.Value{Value: 60, Bound: 50}, PartnerRepeats: scheduler.Value{Value: 2, Bound: 2}}
	text := strings.Join(bars(c, k), "\n")
	for _, want := range []string{"meeting evenness  ▰▰▰▰▰▰▰▰▰▰┃▰▰▱▱▱ 60, none below 50", "2, ✓ proved best"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
}

// TestTheMapInASCII has other shapes for other numbers.
func TestTheMapInASCII(t *testing.T) {
	plain := theme.Of(theme.Choice{ASCII: true})
	shapes := map[string]bool{}
	for _, mark := range []string{"·", "░", "▒", "▓", "╲", "◆", "×"} {
		shapes[plain.Finish(mark)] = true
	}
	if len(shapes) != 7 {
		t.Errorf("%d shapes of 7: %v", len(shapes), shapes)
	}
}

// TestPinnedGamesAreMarked among the rounds to come.
func TestPinnedGamesAreMarked(t *testing.T) {
	c := evening(t, 1)
	g := c.Rotation.Rounds[0].Games[1]
	n := c.Ledger.Night()
	n.Pins = append(n.Pins, session.Pin{Round: 3, A: g.A})
	text := strings.Join(layout(c), "\n")
	if !strings.Contains(text, "2  E & F  v  G & H  ◆ by hand") || strings.Count(text, "by hand") != 1 {
		t.Errorf("the pinned game is not marked:\n%s", text)
	}
}
