package tui

import (
	"errors"
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
)

// work is something that keys wait for.
type work struct {
	run    int       // tells its messages from those of other work
	what   string    // as in "working out the rotation"
	began  time.Time // for the time it takes
	cancel func()    // nil where it must be waited for, since it goes to the disk
	stays  bool      // cancelled or not, its result tells what became of it
	ending bool      // it was cancelled and is still to tell
	long   bool      // it is told how long it goes on, and esc cancels it
}

// patience is how long work may go on before it is told how long.
const patience = 300 * time.Millisecond

// longMsg is that work goes on for long.
type longMsg struct{ run int }

// begin lets keys wait for work. Its result comes with what is returned, and ends it.
func (m *Model) begin(w work, result tea.Cmd) tea.Cmd {
	m.works++
	w.run = m.works
	if w.began.IsZero() {
		w.began = m.now
	}
	m.busy, m.work = true, &w
	if m.patience <= 0 {
		return result
	}
	return tea.Batch(result, m.again(m.patience))
}

// again tells later how long the work goes on.
func (m *Model) again(after time.Duration) tea.Cmd {
	run := m.works
	return tea.Tick(after, func(time.Time) tea.Msg { return longMsg{run} })
}

// goesOn tells how long the work goes on, again and again.
func (m *Model) goesOn(msg longMsg) tea.Cmd {
	if m.work == nil || m.work.run != msg.run {
		return nil
	}
	m.work.long = true
	if m.patience <= 0 {
		return nil
	}
	return m.again(time.Second)
}

// finish ends the work with that number, and tells whether it was still waited for.
func (m *Model) finish(run int) bool {
	if m.work == nil || m.work.run != run {
		return false
	}
	m.note(m.work.what, m.now.Sub(m.work.began))
	m.busy, m.work = false, nil
	return true
}

// note remembers how long work took, for how long it may take the next time.
func (m *Model) note(what string, took time.Duration) {
	if m.took == nil {
		m.took = map[string]time.Duration{}
	}
	m.took[what] = took
}

// rotationWork is the work for which a call waits.
const rotationWork = "working out the rotation"

// errCancelled is what became of work that was cancelled before it changed anything.
var errCancelled = errors.New("cancelled: nothing was changed")

// cancelWork ends long work by key. What was typed to come after it is forgotten, and that is told: it was meant for
// what does not come now. It tells whether there was work to cancel.
func (m *Model) cancelWork() bool {
	w := m.work
	if w == nil || !w.long || w.cancel == nil {
		return false
	}
	w.cancel()
	typed := len(m.queue)
	m.queue = nil
	if w.stays {
		w.ending = true
		return true
	}
	m.busy, m.work = false, nil
	err := errCancelled
	if typed > 0 {
		err = fmt.Errorf("%w; %s typed meanwhile not taken", errCancelled, session.Counted(typed, "key"))
	}
	m.refuse(err)
	return true
}

// line says what goes on, for how long, how long it may take yet, what waits for it and how it is cancelled.
func (w *work) line(m *Model) string {
	text := w.what + "…"
	if !w.long {
		return text
	}
	is := m.now.Sub(w.began)
	text += fmt.Sprintf(" %d s", int(is.Seconds()))
	if left := m.took[w.what] - is; left > 0 {
		text += fmt.Sprintf(", about %d s left", int(left.Seconds())+1)
	}
	if k := len(m.queue); k > 0 {
		text += ", " + session.Counted(k, "key") + " waiting"
	}
	switch {
	case w.ending:
		text += " (ending)"
	case w.cancel != nil:
		text += " (esc cancels)"
	}
	return text
}

// long tells whether work goes on that must be told.
func (m *Model) long() bool { return m.work != nil && m.work.long }
