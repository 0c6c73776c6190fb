package dialog

import (
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Page is text to read; any key but the arrows closes it.
type Page struct {
	heading string
	text    func(c ui.Context) []string
	scroll  ui.Scroller
	whole   bool
}

// NewPage makes a page whose text is made anew each time it is drawn.
func NewPage(heading string, text func(c ui.Context) []string) *Page {
	return &Page{heading: heading, text: text}
}

// NewWhole makes a page that wants all of the screen; its heading stands in its text.
func NewWhole(heading string, text func(c ui.Context) []string) *Page {
	return &Page{heading: heading, whole: true, text: func(c ui.Context) []string {
		return append([]string{c.Theme.Strong.Render(line.Cut(heading, c.Width))}, text(c)...)
	}}
}

// Whole tells whether the page wants all of the screen but the line of keys.
func (p *Page) Whole() bool { return p.whole }

// Title implements ui.Dialog.
func (p *Page) Title() string { return p.heading }

// Actions implements ui.Dialog.
func (p *Page) Actions(c ui.Context) []ui.Action {
	return append([]ui.Action{ui.Ask(ui.Bind("back", "esc", "esc", "enter", "q"), ui.Close{})}, p.scroll.Actions(len(p.text(c)), c.Height)...)
}

// AnyKey tells that every key closes it, and nothing else happens.
func (*Page) AnyKey() bool { return true }

// Type implements ui.Typist: any other key closes the page too.
func (p *Page) Type(ui.Context, tea.KeyMsg) (ui.Intent, bool) { return ui.Close{}, true }

// Lines implements ui.Dialog.
func (p *Page) Lines(c ui.Context) []string {
	out := make([]string, 0, c.Height)
	for _, t := range p.scroll.Seen(p.text(c), c.Height) {
		out = append(out, line.Cut(t, c.Width))
	}
	return out
}
