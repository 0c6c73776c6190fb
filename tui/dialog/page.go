package dialog

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Page is text to read; any key but the arrows closes it.
type Page struct {
	heading string
	text    func(c ui.Context) []string
	top     int
}

// NewPage makes a page whose text is made anew each time it is drawn.
func NewPage(heading string, text func(c ui.Context) []string) *Page {
	return &Page{heading: heading, text: text}
}

// Title implements ui.Dialog.
func (p *Page) Title() string { return p.heading }

// Press implements ui.Dialog.
func (p *Page) Press(c ui.Context, k tea.KeyMsg) ui.Intent {
	last := max(0, len(p.text(c))-c.Height)
	switch k.String() {
	case "up":
		p.top = max(0, p.top-1)
	case "down":
		p.top = min(last, p.top+1)
	case "pgup":
		p.top = max(0, p.top-c.Height)
	case "pgdown", " ":
		p.top = min(last, p.top+c.Height)
	default:
		return ui.Close{}
	}
	return nil
}

// Lines implements ui.Dialog.
func (p *Page) Lines(c ui.Context) []string {
	text := p.text(c)
	top := min(p.top, max(0, len(text)-c.Height))
	out := make([]string, 0, c.Height)
	for _, t := range text[top:min(len(text), top+c.Height)] {
		out = append(out, line.Cut(t, c.Width))
	}
	return out
}

// Keys implements ui.Dialog.
func (p *Page) Keys(c ui.Context) []key.Binding {
	keys := []key.Binding{ui.Bind("back", "esc", "esc")}
	if len(p.text(c)) > c.Height {
		keys = append(keys, ui.Bind("scroll", "↑↓", "up", "down"))
	}
	return keys
}
