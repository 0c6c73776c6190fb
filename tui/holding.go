package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/emergency"
	"club/quadrille/tui/hold"
	"club/quadrille/tui/ui"
)

// held tells whether play is held.
func (m *Model) held() bool {
	n := m.ledger.Night()
	return n != nil && n.Hold != nil
}

// hold asks why play is to be held, or shows the hold that goes on.
func (m *Model) hold() tea.Cmd {
	if m.ledger.Night() == nil {
		return m.fail(session.ErrNoNight)
	}
	if m.held() {
		m.showHold()
		return nil
	}
	return m.show(m.holdMenu())
}

// showHold lets the hold take the screen.
func (m *Model) showHold() {
	m.hideHold()
	undo := ui.Own{Do: m.undo}
	for _, d := range m.keys {
		if d.name == holdKey {
			m.dialogs = append(m.dialogs, hold.New(undo, append(d.letters[:len(d.letters):len(d.letters)], d.always...)))
		}
	}
}

// hideHold takes the hold off the screen, with what was asked on it.
func (m *Model) hideHold() {
	for i, d := range m.dialogs {
		if _, ok := d.(*hold.Page); ok {
			m.dialogs = m.dialogs[:i:i]
			return
		}
	}
}

// followHold shows a hold that has begun and hides one that has ended.
func (m *Model) followHold(before bool) {
	switch now := m.held(); {
	case now && !before:
		m.showHold()
	case !now && before:
		m.hideHold()
	}
}

// cardKey is the name of the key of the emergency card.
const cardKey = "emergency card"

// card shows the emergency card.
func (m *Model) card() tea.Cmd { return m.show(emergency.New(m.ledger)) }

// holdKey is the name of the key of the hold.
const holdKey = "hold play"

// holdMenu asks why play is held.
func (m *Model) holdMenu() *dialog.Menu {
	var items []dialog.Item
	for _, w := range []struct{ key, why string }{
		{"l", "lightning or thunder"}, {"h", "heat"}, {"i", "injury"}, {"w", "wet court"}, {"o", "organiser's call"},
	} {
		items = append(items, dialog.Item{Key: w.key, Label: w.why, Intent: ui.Do{Command: session.HoldPlay{Why: w.why}}})
	}
	return dialog.NewMenu("Hold play: why?", items...)
}

// heldText is the hold in the line of what is next.
func (m *Model) heldText(h session.Hold, keys stepKeys) string {
	return fmt.Sprintf("play is held (%s, %s). %s Press %s for the hold: who was told, and when play may go on",
		h.Why, since(m.now, h.Since), hold.Caution(h.Why), keys.hold)
}
