package tui

import (
	"errors"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// trouble is an action that the disk would not take. While there is one the desk shows it, takes no
// other action, and offers to try again, to give it up, or to write a copy elsewhere.
type trouble struct {
	command session.Command
	after   pending
	err     *session.KeepError
}

// errUnsaved refuses actions that would come after one that is not on disk.
var errUnsaved = errors.New("the last action is not saved yet: ctrl+r tries again, esc gives it up")

// notKept takes note of a command that could not be made durable, and tells whether it is one. It is
// whole in itself: the box or the line that it was typed in is put away, so that the keys are free to
// save the night elsewhere. What was typed after it was meant for a state that has not come about,
// and is dropped.
func (m *Model) notKept(msg doneMsg, after pending) bool {
	var keep *session.KeepError
	if !errors.As(msg.err, &keep) || msg.command == nil {
		return false
	}
	m.trouble, m.queue = &trouble{msg.command, after, keep}, nil
	if after.dialog != nil {
		m.closeDialog(after.dialog)
	}
	if typed, ok := m.screens[m.active].(ui.Leaver); ok {
		typed.Leave()
	}
	return true
}

// pressTrouble handles the keys that are about an action that is not saved.
func (m *Model) pressTrouble(k tea.KeyMsg) (cmd tea.Cmd, taken bool) {
	if m.trouble == nil || m.wrong != nil {
		return nil, false
	}
	switch k.Type {
	case tea.KeyCtrlR:
		t := m.trouble
		m.trouble = nil
		return m.do(t.command, t.after), true
	case tea.KeyEsc:
		if m.dialog() != nil {
			return nil, false // it closes the box, such as the one for a copy
		}
		m.trouble, m.notice = nil, ""
		m.refuse(errors.New("given up: the last action was not done"))
		return nil, true
	}
	return nil, false
}

// troubleNext is what to do about an action that is not saved.
const troubleNext = "ctrl+r tries again to save the last action, esc gives it up; o, then w writes a copy elsewhere. Nothing else is lost."

// troubleLine tells why an action is not saved. Where it is too long the end of it counts, which says
// what to do.
func (m *Model) troubleLine() string {
	const head, cut = "! not saved: ", "…"
	text := oneLine(m.trouble.err.Err.Error())
	if over := line.Width(head+text) - m.width; over > 0 {
		text = ansi.TruncateLeft(text, over+line.Width(cut), cut)
	}
	return head + text
}
