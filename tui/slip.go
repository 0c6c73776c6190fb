package tui

import (
	"time"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/name"
	"club/quadrille/tui/ui"
)

// slip is a letter that was a key, and may turn out to be the first of a name that is typed on the wrong
// screen, letter by letter.
type slip struct {
	letter string
	at     time.Time
	last   uint64 // the newest record before it
}

// slipTime is how soon the second letter of a name comes at the latest.
const slipTime = time.Second

// noteSlip tells, of a letter that comes right after one that did something for the whole hall, whether both
// begin the name of somebody tonight. If so the letter before is taken back, and both go to the finder.
func (m *Model) noteSlip(k tea.KeyMsg, at time.Time) (tea.Cmd, bool) {
	before := m.slip
	m.slip = slip{}
	if k.Type != tea.KeyRunes || k.Paste || k.Alt || len(k.Runes) != 1 || !unicode.IsLetter(k.Runes[0]) {
		return nil, false
	}
	letter := string(k.Runes)
	if before.letter != "" && at.Sub(before.at) <= slipTime && m.beginsName(before.letter+letter) {
		m.dialogs = nil // what the first letter opened
		return m.takeBack(before, letter), true
	}
	if len(m.dialogs) == 0 && !m.typing(m.context()) && m.acts(letter) {
		m.slip = slip{letter, at, m.ledger.Last()}
	}
	return nil, false
}

// acts tells whether a letter does something for the whole hall at once: the next step, undo and redo.
func (m *Model) acts(letter string) bool {
	for _, d := range m.keys {
		if d.name != "next step" && d.name != "undo" && d.name != "redo" {
			continue
		}
		for _, l := range d.letters {
			if l == letter {
				return true
			}
		}
	}
	return false
}

// takeBack undoes what the first letter of a name did, if it did anything, and looks for the name.
func (m *Model) takeBack(s slip, second string) tea.Cmd {
	look := func(*session.Ledger) {
		m.find()
		for _, letter := range []string{s.letter, second} {
			m.press(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(letter)})
		}
	}
	actions := m.ledger.Actions()
	if len(actions) == 0 || actions[len(actions)-1].ID <= s.last {
		look(nil)
		return nil
	}
	newest := actions[len(actions)-1]
	var c session.Command = session.UndoAction{Action: newest.ID}
	switch newest.Events[0].(type) {
	case session.Undone:
		c = session.Redo{}
	case session.Redone:
		c = session.Undo{}
	}
	return m.do(c, pending{then: look})
}

// beginsName tells whether letters begin the name of somebody tonight.
func (m *Model) beginsName(letters string) bool {
	n := m.ledger.Night()
	if n == nil {
		return false
	}
	want := name.Plain(letters)
	for _, a := range n.Roll {
		if ui.Begins(name.Plain(m.names.Full(a.Person)), want) {
			return true
		}
	}
	return false
}
