// Package teach has the two pages for newcomers: the rules card, and the drill that asks for the
// next call.
package teach

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scoring/drill"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// Card shows what a newcomer has to know on one screen.
type Card struct{ scroll ui.Scroller }

// NewCard makes the page.
func NewCard() *Card { return &Card{} }

// Title implements ui.Dialog.
func (*Card) Title() string { return "Rules card" }

// Whole tells that the page wants the whole screen.
func (*Card) Whole() bool { return true }

// Actions implements ui.Dialog.
func (d *Card) Actions(c ui.Context) []ui.Action {
	return append([]ui.Action{ui.Ask(ui.Bind("back", "any key", "esc", "enter", "q"), ui.Close{})}, d.scroll.Actions(len(card(c)), c.Height)...)
}

// AnyKey tells that every key closes it, and nothing else happens.
func (*Card) AnyKey() bool { return true }

// Type implements ui.Typist: any other key closes the card too.
func (d *Card) Type(ui.Context, tea.KeyMsg) (ui.Intent, bool) { return ui.Close{}, true }

// Lines implements ui.Dialog.
func (d *Card) Lines(c ui.Context) []string {
	var out []string
	for _, t := range d.scroll.Seen(card(c), c.Height) {
		out = append(out, line.Cut(t, c.Width))
	}
	return out
}

// cardSizes are the courts that the card is drawn with, and the columns of the whole, the largest first.
var cardSizes = []struct{ height, width, least int }{{21, 170, 50}, {17, 119, 32}, {11, 80, 0}}

// card is the text beside and under a court to scale with the names of its parts.
func card(c ui.Context) []string {
	for _, size := range cardSizes {
		if c.Width >= size.width && c.Height >= size.least || size.least == 0 {
			width, height, _ := widget.ToScale(size.width, size.height)
			return drill.CardBeside(named(width, height), width, size.width)
		}
	}
	return nil
}

// named is the court with the name of each part written at the part.
func named(width, height int) []string {
	box := func(left bool) widget.Spot {
		if left {
			return widget.Spot{Name: "left box"}
		}
		return widget.Spot{Name: "right box"}
	}
	rows := widget.Court{Left: [2]widget.Spot{box(true), box(false)}, Right: [2]widget.Spot{box(false), box(true)}}.Lines(width, height)
	net, zone := width/2, width*drill.Kitchen/drill.Length
	middle := (height - 1) / 2
	for i, word := range []string{"kit-", "chen"} {
		write(rows, middle-2+i, net-zone+2, word)
		write(rows, middle-2+i, net+2, word)
	}
	write(rows, middle, 2, "centre line")
	write(rows, middle, width-13, "centre line")
	above, below := []string{strings.Repeat(" ", width)}, []string{strings.Repeat(" ", width)}
	write(above, 0, 0, "baseline")
	write(above, 0, net-1, "net")
	write(above, 0, width-8, "baseline")
	write(rows, 0, 2, "sideline")
	write(below, 0, min(net-13, net-zone-6), "kitchen line")
	write(below, 0, max(net+2, net+zone-6), "kitchen line")
	return append(append(above, rows...), below...)
}

// write puts a word over a row, from a column on.
func write(rows []string, row, column int, word string) {
	cells := []rune(rows[row])
	copy(cells[max(0, column):], []rune(word))
	rows[row] = string(cells)
}
