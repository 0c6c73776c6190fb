// Package teach has the two pages for newcomers: the rules card, and the drill that asks for the
// next call.
package teach

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scoring/drill"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Card shows what a newcomer has to know on one screen.
type Card struct{ top int }

// NewCard makes the page.
func NewCard() *Card { return &Card{} }

// Title implements ui.Dialog.
func (*Card) Title() string { return "Rules card" }

// Whole tells that the page wants the whole screen.
func (*Card) Whole() bool { return true }

// Press implements ui.Dialog.
func (d *Card) Press(c ui.Context, k tea.KeyMsg) ui.Intent {
	last := max(0, len(drill.Card())-c.Height)
	switch k.String() {
	case "up":
		d.top = max(0, d.top-1)
	case "down":
		d.top = min(last, d.top+1)
	default:
		return ui.Close{}
	}
	return nil
}

// Lines implements ui.Dialog.
func (d *Card) Lines(c ui.Context) []string {
	text := drill.Card()
	from := min(d.top, max(0, len(text)-c.Height))
	var out []string
	for _, t := range text[from:min(len(text), from+c.Height)] {
		out = append(out, line.Cut(t, c.Width))
	}
	return out
}

// Keys implements ui.Dialog.
func (*Card) Keys(ui.Context) []key.Binding {
	return []key.Binding{ui.Bind("back", "any key", "esc")}
}
