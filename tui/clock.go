package tui

import (
	"errors"
	"fmt"
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
)

// noteClock lets the session write down that the laptop's clock was moved. Until that is done, what is
// typed waits: the screens would show it times that are wrong.
func (m *Model) noteClock() tea.Cmd {
	if m.busy || m.trouble != nil || m.clockUnsaved || !m.desk.ClockMoved() {
		return nil
	}
	return m.do(session.NoteClock{}, pending{})
}

// clockNoted takes note of what became of noteClock, and tells whether the result is one of it. If the
// disk did not take it, the next action brings it along, and tells what is wrong with the disk.
func (m *Model) clockNoted(msg doneMsg) bool {
	_, noted := msg.command.(session.NoteClock)
	m.clockUnsaved = noted && msg.err != nil
	return noted
}

// tellClock says once that the clock was moved, if next knows of it and the ledger before did not.
func (m *Model) tellClock(next *session.Ledger) {
	last := m.ledger.Last()
	for _, a := range slices.Backward(next.Actions()) {
		if a.ID <= last {
			return
		}
		if e, ok := a.Events[0].(session.ClockMoved); ok && e.Noticeable() {
			m.refuse(errors.New(clockText(e, next.Night(), m.now)))
		}
	}
}

// clockText says how the clock was moved, and what follows from it.
func clockText(e session.ClockMoved, n *session.Night, now time.Time) string {
	const counted = "waits and games are counted by the time that has passed"
	text := e.Words() + "; "
	switch {
	case e.Closed:
		return text + "waits and games do not count it"
	case n == nil || n.Settings.Closing.IsZero() || e.Moved()%(24*time.Hour) == 0:
		return text + counted
	}
	return text + fmt.Sprintf("%s; closing time is %s by it now (o, then e, changes it)", counted, n.Settings.Closing.In(now.Location()).Format("15:04"))
}

// doubtClock says that the clock shows a time before the newest record, when no night is open: then
// either it is wrong now, or it was ahead when that was written.
func (m *Model) doubtClock() {
	last := m.ledger.Clock()
	if m.ledger.Night() != nil || !m.now.Before(last.Add(-time.Minute)) {
		return
	}
	last = last.In(m.now.Location())
	layout := "2 Jan 2006"
	if m.now.Format(layout) == last.Format(layout) {
		layout = "15:04"
	}
	m.refuse(fmt.Errorf("the laptop's clock says %s; the last night was %s", m.now.Format(layout), last.Format(layout)))
}
