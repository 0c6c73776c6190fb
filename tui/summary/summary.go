// Package summary is the page of a night in short: games, people, courts, who leads, how fair it was, and what
// is worth remembering.
package summary

import (
	"club/quadrille/session/summary"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Page is the summary of the newest night.
type Page struct {
	sections []summary.Section
	name     string
	known    bool
	scroll   ui.Scroller
}

// New makes the page.
func New() *Page { return &Page{} }

// Typing implements ui.Screen.
func (p *Page) Typing() bool { return false }

// Click implements ui.Screen.
func (p *Page) Click(ui.Context, int, int) ui.Intent { return nil }

// Leave implements ui.Leaver.
func (p *Page) Leave() { p.scroll = ui.Scroller{} }

// Survey implements ui.Surveyor.
func (p *Page) Survey(c ui.Context) {
	s, ok := summary.Of(c.Ledger, c.Now)
	p.known, p.name, p.sections = ok, s.Name, nil
	if ok {
		p.sections = s.Words(c.Now.Location())
	}
}

// Actions implements ui.Screen.
func (p *Page) Actions(c ui.Context) []ui.Action {
	return append([]ui.Action{
		ui.Ask(ui.Bind("by courts", "t", "t"), ui.Open{Page: ui.TimelinePage}).Explained("the night by its courts"),
		ui.Ask(ui.Bind("back", "esc", "esc"), ui.Back{}).Explained("back to where the page was opened"),
	}, p.scroll.Actions(len(p.text(c)), c.Height)...)
}

// twoColumns is the width from which on the sections stand in two columns.
const twoColumns = 140

// text is all of the page.
func (p *Page) text(c ui.Context) []string {
	if !p.known {
		return []string{"", "  No night was opened yet."}
	}
	out := []string{c.Theme.Title.Render(p.name) + c.Theme.Dim.Render("  in short"), ""}
	if c.Width < twoColumns {
		for _, s := range p.sections {
			out = append(out, block(c, s, c.Width)...)
		}
		return out
	}
	width := c.Width/2 - 2
	var left, right []string
	for i, s := range p.sections {
		if i < 3 {
			left = append(left, block(c, s, width)...)
		} else {
			right = append(right, block(c, s, width)...)
		}
	}
	return append(out, line.Beside(left, right, width, 4)...)
}

// block is a section with a blank line below it.
func block(c ui.Context, s summary.Section, width int) []string {
	out := []string{c.Theme.Strong.Render(s.Title)}
	for _, text := range s.Lines {
		for i, l := range line.Wrap(text, max(8, width-4)) {
			if i > 0 {
				l = "  " + l
			}
			out = append(out, "  "+l)
		}
	}
	return append(out, "")
}

// Lines implements ui.Screen.
func (p *Page) Lines(c ui.Context) []string {
	out := p.scroll.Seen(p.text(c), c.Height)
	for i := range out {
		out[i] = line.Cut(out[i], c.Width)
	}
	return out
}
