// Package teach has the two pages for newcomers: the rules card, and the drill that asks for the
// next call.
package teach

import (
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

// Actions implements ui.Dialog.
func (d *Card) Actions(c ui.Context) []ui.Action {
	out := []ui.Action{ui.Ask(ui.Bind("back", "any key", "esc", "enter", "q"), ui.Close{})}
	if rows := len(drill.Card()); rows > c.Height {
		out = append(out, ui.Scroll(&d.top, rows, c.Height))
	}
	return out
}

// AnyKey tells that every key closes it, and nothing else happens.
func (*Card) AnyKey() bool { return true }

// Type implements ui.Typist: any other key closes the card too.
func (d *Card) Type(ui.Context, tea.KeyMsg) (ui.Intent, bool) { return ui.Close{}, true }

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
