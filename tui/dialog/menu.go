// Package dialog has the boxes that open over a screen: a menu of choices, a form to fill in, a
// finder of people, and a page to read. Esc always closes them, and nothing happens then.
package dialog

import (
	"errors"

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

// Marking marks a choice from the beginning, so that enter takes it: for what is asked for nothing else.
func (m *Menu) Marking(i int) *Menu {
	m.cursor = i
	return m
}

// Items lists the choices.
func (m *Menu) Items() []Item { return m.items }

// Title implements ui.Dialog.
func (m *Menu) Title() string { return m.heading }

// Actions implements ui.Dialog.
func (m *Menu) Actions(ui.Context) []ui.Action {
	out := []ui.Action{
		{Key: ui.Bind("choose", "↑↓", "up", "down", "shift+tab", "tab", "home", "end"), Do: func(key string) ui.Intent {
			m.move(key)
			return nil
		}},
		{Key: ui.Bind("take", "enter", "enter"), Quiet: m.cursor < 0, Do: func(string) ui.Intent {
			if m.cursor < 0 || m.cursor >= len(m.items) {
				return nil
			}
			return m.take(m.items[m.cursor])
		}},
		ui.Ask(ui.Bind("back", "esc", "esc"), ui.Close{}),
	}
	for i, item := range m.items {
		out = append(out, ui.Act(ui.Bind(item.Label, item.Key, item.Key), func() ui.Intent {
			m.cursor = i
			return m.take(item)
		}).Quietly())
	}
	return out
}

func (m *Menu) move(key string) {
	n := max(1, len(m.items))
	switch key {
	case "home":
		m.cursor = 0
	case "end":
		m.cursor = n - 1
	case "down", "tab":
		m.cursor = (m.cursor + 1) % n
	default:
		m.cursor = (max(0, m.cursor) + n - 1) % n
	}
}

func (m *Menu) take(item Item) ui.Intent {
	if item.Why != "" {
		return ui.Refuse{Err: errors.New(item.Why)}
	}
	return ui.Close{Then: item.Intent}
}

// window is the note above the choices, and which of them are shown.
func (m *Menu) window(c ui.Context) (note []string, from, until int) {
	if m.note != "" {
		note = line.Wrap(m.note, c.Width)
	}
	room := max(1, c.Height-len(note))
	if len(m.items) > room {
		room-- // for the line that says so
	}
	from, until = line.Window(len(m.items), room, m.cursor)
	return note, from, until
}

// Click implements ui.Clicker: a click takes what it is on.
func (m *Menu) Click(c ui.Context, _, y int) ui.Intent {
	note, from, until := m.window(c)
	i := from + y - len(note)
	if i < from || i >= until {
		return nil
	}
	m.cursor = i
	return m.take(m.items[i])
}

// Lines implements ui.Dialog.
func (m *Menu) Lines(c ui.Context) []string {
	out, from, until := m.window(c)
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

// Next implements ui.Adviser.
func (m *Menu) Next(ui.Context) (string, bool) {
	if m.cursor >= 0 && m.cursor < len(m.items) && m.items[m.cursor].Why != "" {
		return "not now: " + m.items[m.cursor].Why, true // the line of the choice may have been too short for it
	}
	return "choose with the arrows and enter, or by the key before it; esc goes back", true
}
