// Package dialog has the boxes that open over a screen: a menu of choices, a form to fill in, a
// finder of people, and a page to read. Esc always closes them, and nothing happens then.
package dialog

import (
	"errors"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Item is one choice of a menu.
type Item struct {
	Key    string // the letter that takes it at once
	Label  string
	Intent ui.Intent
	Why    string // why it cannot be taken now; empty when it can
}

// Menu is a list of choices.
type Menu struct {
	heading string
	note    string
	items   []Item
	cursor  int
}

// NewMenu makes a menu. No choice is marked until an arrow marks one, so that a second enter out of
// habit takes nothing.
func NewMenu(heading string, items ...Item) *Menu {
	return &Menu{heading: heading, items: items, cursor: -1}
}

// Noting says something above the choices; nothing if it is empty.
func (m *Menu) Noting(text string) *Menu {
	m.note = text
	return m
}

// Title implements ui.Dialog.
func (m *Menu) Title() string { return m.heading }

// Press implements ui.Dialog.
func (m *Menu) Press(_ ui.Context, k tea.KeyMsg) ui.Intent {
	switch text := k.String(); text {
	case "esc":
		return ui.Close{}
	case "up", "shift+tab":
		m.cursor = (max(0, m.cursor) + len(m.items) - 1) % max(1, len(m.items))
	case "down", "tab":
		m.cursor = (m.cursor + 1) % max(1, len(m.items))
	case "enter":
		if m.cursor >= 0 && m.cursor < len(m.items) {
			return m.take(m.items[m.cursor])
		}
	default:
		for i, item := range m.items {
			if item.Key == text {
				m.cursor = i
				return m.take(item)
			}
		}
	}
	return nil
}

func (m *Menu) take(item Item) ui.Intent {
	if item.Why != "" {
		return ui.Refuse{Err: errors.New(item.Why)}
	}
	return ui.Close{Then: item.Intent}
}

// Lines implements ui.Dialog.
func (m *Menu) Lines(c ui.Context) []string {
	var out []string
	if m.note != "" {
		out = line.Wrap(m.note, c.Width)
	}
	room := max(1, c.Height-len(out))
	if len(m.items) > room {
		room-- // for the line that says so
	}
	from, until := line.Window(len(m.items), room, m.cursor)
	for i, item := range m.items[from:until] {
		mark, style := "  ", c.Theme.Strong
		if item.Why != "" {
			style = c.Theme.Dim
		}
		text := line.Fit(" "+item.Key, 4) + item.Label
		if item.Why != "" {
			text += " (" + item.Why + ")"
		}
		if from+i == m.cursor {
			mark, style = "> ", c.Theme.Selected
		}
		out = append(out, mark+style.Render(line.Fit(text, c.Width-2)))
	}
	if text := shown(from, until, len(m.items), c.Width); text != "" {
		out = append(out, c.Theme.Dim.Render(text))
	}
	return out
}

// Keys implements ui.Dialog.
func (m *Menu) Keys(ui.Context) []key.Binding {
	return []key.Binding{
		ui.Bind("choose", "↑↓", "up", "down"),
		ui.Bind("take", "enter", "enter"),
		ui.Bind("back", "esc", "esc"),
	}
}

// Next implements ui.Adviser.
func (m *Menu) Next(ui.Context) (string, bool) {
	return "choose with the arrows and enter, or by its letter; esc goes back", true
}
