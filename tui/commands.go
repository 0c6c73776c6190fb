package tui

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/tui/courts"
	"club/quadrille/tui/dialog"

	"club/quadrille/tui/palette"

	"club/quadrille/tui/ui"
)

// commands opens the palette over all that can be done. From a box it lies above that one, and what is taken
// there closes both.
func (m *Model) commands() tea.Cmd {
	return m.show(palette.New(m.entries(m.context())))
}

// renewPalette brings an open palette up to a state that has changed.
func (m *Model) renewPalette() {
	if p, ok := m.dialog().(*palette.Palette); ok {
		p.Renew(m.entries(m.context()))
	}
}

// entries lists all that can be done, gone to or asked for: what the screen does, the desk, what concerns the
// night, each court, the people, and the nights before.
func (m *Model) entries(c ui.Context) []palette.Entry {
	out := actionEntries(m.screenActions(c))
	desk := slices.DeleteFunc(m.deskActions(c), func(a ui.Action) bool { return a.Key.Help().Desc == allCommands })
	out = append(out, actionEntries(desk)...)
	out = append(out, m.pageEntries(out)...)
	out = append(out, m.menuEntries()...)
	out = append(out, m.printEntries()...)
	out = append(out, m.typedEntries()...)
	out = append(out, m.courtEntries(c)...)
	if m.listed.of != c.Ledger {
		m.listed = listed{c.Ledger, append(m.peopleEntries(c), m.nightEntries()...)}
	}
	return append(out, m.listed.entries...)
}

// listed are the entries of the palette for people and nights, made once for a state and a minute. Those that open a
// box of their own are made anew each time, since what was typed into one must not stand in the next.
type listed struct {
	of      *session.Ledger // nil before the palette is opened
	entries []palette.Entry
}

// actionEntries are the actions that have a name.
func actionEntries(actions []ui.Action) []palette.Entry {
	var out []palette.Entry
	for _, a := range actions {
		for _, w := range a.Named() {
			note, keys := a.Text(), a.Key.Help().Key
			if len(a.Ways) > 0 {
				keys = w.Key
			}
			if note == w.Label {
				note = ""
			}
			out = append(out, palette.Entry{
				Label: w.Label, Note: note, Keys: keys, Why: a.Why, Also: alsoCalled[w.Label], Take: func() ui.Intent { return a.Take(w.Key) },
			})
		}
	}
	return out
}

// menuEntries are the items of the menus that concern the whole night.
func (m *Model) menuEntries() []palette.Entry {
	var out []palette.Entry
	add := func(name string, menu *dialog.Menu) {
		key := m.deskKey(name)
		for _, item := range menu.Items() {
			out = append(out, itemEntry(item, item.Label, menu.Title(), key))
		}
	}
	if m.ledger.Night() != nil {
		add("options", m.nightMenu())
		if !m.held() {
			add(holdKey, m.holdMenu())
		}
	} else {
		add("options", m.beforeMenu())
	}
	if menu, err := m.teachMenu(); err == nil {
		add("teach", menu)
	}
	return out
}

// deskKey is the letter of a key of the desk, by its name.
func (m *Model) deskKey(name string) string { return m.shownKey(name, false) }

// itemEntry is an item of a menu that the keys before its own open.
func itemEntry(item dialog.Item, label, note, before string) palette.Entry {
	return palette.Entry{
		Label: label, Note: note, Keys: before + " " + item.Key, Why: item.Why, Take: func() ui.Intent { return item.Intent },
	}
}

// courtEntries are the courts, and all that can be done about each.
func (m *Model) courtEntries(c ui.Context) []palette.Entry {
	n := c.Night()
	if n == nil {
		return nil
	}
	var places, items []palette.Entry
	for _, h := range c.Hall.Courts {
		court, name := n.Court(h.ID), "court "+string(h.ID)
		places = append(places, palette.Entry{
			Label: name, Note: courtNote(c, h), Keys: "g " + string(h.ID), Take: func() ui.Intent { return ui.GoCourt{Court: h.ID} },
		})
		if court == nil {
			continue
		}
		for _, choice := range courts.Choices(c, *court) {
			keys := "g " + string(h.ID) + " " + choice.Before
			items = append(items, itemEntry(choice.Item, courtLabel(choice.Item.Label, name), "", keys))
		}
	}
	return append(places, items...)
}

// courtLabel names the court in an item of its menus.
func courtLabel(label, court string) string {
	if strings.Contains(label, "this court") {
		return strings.ReplaceAll(label, "this court", court)
	}
	return court + ": " + label
}

// courtNote says what goes on at a court.
func courtNote(c ui.Context, h hall.Court) string {
	sides := c.Names.Team(h.A) + " v " + c.Names.Team(h.B)
	minutes := fmt.Sprintf("%d min, ", int(h.Played.Minutes()))
	switch h.State {
	case hall.Closed:
		return "closed"
	case hall.Free:
		return "free"
	case hall.Planned:
		return "next: " + sides
	case hall.Over:
		return "over: " + sides
	}
	return minutes + sides
}

// peopleEntries are the people of tonight, with where they are.
func (m *Model) peopleEntries(c ui.Context) []palette.Entry {
	n := c.Night()
	if n == nil {
		return nil
	}
	var out []palette.Entry
	for _, a := range n.Roll {
		out = append(out, palette.Entry{
			Label: c.Names.Full(a.Person), Note: whereabouts(c, a), Keys: m.deskKey("find"),
			Take: func() ui.Intent { return ui.ShowPerson{Person: a.Person} },
		})
	}
	return out
}

// nightEntries are the nights that are over, the newest first.
func (m *Model) nightEntries() []palette.Entry {
	var out []palette.Entry
	nights := m.ledger.Club().Nights
	for i := len(nights) - 1; i >= 0; i-- {
		n := nights[i]
		if n == m.ledger.Night() {
			continue
		}
		day := n.Opened.In(m.now.Location()).Format("2 January 2006")
		out = append(out, palette.Entry{
			Label: "night of " + day, Note: n.Name + ", " + session.Counted(len(n.Games), "game"), Keys: m.deskKey(earlierNights),
			Take: func() ui.Intent { return ui.Own{Do: func() tea.Cmd { return m.openPast(n) }} },
		})
	}
	return out
}

// paletteKey are the keys that open the palette even where letters are text, and over a box.
func (m *Model) paletteKey() key.Binding {
	for _, d := range m.keys {
		if d.name == allCommands {
			return key.NewBinding(key.WithKeys(d.always...))
		}
	}
	return key.Binding{}
}

// coverable tells whether the palette may lie over what is shown: it hides no question that waits for its
// answer before the desk may end.
func (m *Model) coverable() bool {
	for _, d := range m.dialogs {
		if _, open := d.(*palette.Palette); open || d == m.asking {
			return false
		}
	}
	return !m.leaving
}

// allCommands is the name of the key of the palette.
const allCommands = "all"
