package tui

import (
	"errors"
	"path/filepath"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// trouble is an action that the disk would not take, or a club file that is not in its place any more.
// While there is one the desk shows it, takes no action after the one that waits, and offers to save it,
// to give it up, or to write a copy elsewhere.
type trouble struct {
	command session.Command // what waits to be saved, nil if the club file alone is the trouble
	action  string          // the same in words
	after   pending
	err     error
	copied  string // a copy of the club file that has the action too, "" if there is none
}

// displaced tells whether the club file is not where it was opened.
func (t *trouble) displaced() bool { return errors.Is(t.err, session.ErrDisplaced) }

// damaged tells whether the club file is not as it was written any more, so that more than the action
// that waits may be lost and no copy of it can be made.
func (t *trouble) damaged() bool { return errors.Is(t.err, session.ErrDamaged) }

// unsaved refuses an action that would come after one that is not on disk.
func (t *trouble) unsaved() error {
	if t.displaced() {
		return errors.New("the last action is not saved yet: ctrl+b writes the club file back, esc gives it up")
	}
	return errors.New("the last action is not saved yet: ctrl+r tries again, esc gives it up")
}

// notKept takes note of a command that could not be made durable, and tells whether it is one. It is
// whole in itself: the box or the line that it was typed in is put away, so that the keys are free to
// save the night elsewhere. What was typed after it was meant for a state that has not come about,
// and is dropped.
func (m *Model) notKept(msg doneMsg, after pending) bool {
	var keep *session.KeepError
	if !errors.As(msg.err, &keep) || msg.command == nil {
		return false
	}
	m.trouble, m.queue = &trouble{msg.command, msg.words(keep), after, keep.Err, ""}, nil
	if after.dialog != nil {
		m.closeDialog(after.dialog)
	}
	if typed, ok := m.screens[m.active].(ui.Leaver); ok {
		typed.Leave()
	}
	return true
}

// words says what a command that could not be saved was about.
func (d doneMsg) words(keep *session.KeepError) string {
	switch {
	case keep.Action != "":
		return keep.Action
	case d.action != "":
		return d.action
	}
	return "the last action"
}

// pressTrouble handles the keys that are about an action that is not saved, or about the club file.
// They do what the line of what is next says, whatever notice stands in front of it.
func (m *Model) pressTrouble(k tea.KeyMsg) (cmd tea.Cmd, taken bool) {
	t := m.trouble
	if t == nil {
		return nil, false
	}
	switch {
	case k.Type == tea.KeyCtrlB && t.displaced() && m.options.PutBack != nil:
		m.settleNotice()
		return m.putBack(), true
	case k.Type == tea.KeyCtrlR:
		m.settleNotice()
		return m.tryAgain(), true
	case k.Type == tea.KeyEsc && t.command != nil && m.dialog() == nil:
		m.giveUp()
		return nil, true
	}
	return nil, false
}

// settleNotice puts a refusal away that was told while something waited to be saved.
func (m *Model) settleNotice() { m.wrong, m.unread, m.since = nil, 0, false }

// tryAgain does the action that waits once more, or looks for the club file.
func (m *Model) tryAgain() tea.Cmd {
	t := m.trouble
	if t.command == nil {
		return m.look()
	}
	m.trouble = nil
	cmd := m.do(t.command, t.after)
	return func() tea.Msg {
		msg := cmd()
		if done, ok := msg.(doneMsg); ok {
			done.action = t.action
			return done
		}
		return msg
	}
}

// giveUp drops the action that waits. The club file may still not be in its place.
func (m *Model) giveUp() {
	t := m.trouble
	m.trouble, m.notice = nil, ""
	m.settleNotice()
	if t.displaced() {
		m.trouble = &trouble{err: t.err}
	}
	m.refuse(errors.New("given up: the last action was not done"))
}

// putBackMsg is what became of the club file that was to be put back.
type putBackMsg struct {
	aside string // where went what stood in its place, "" if nothing did
	err   error
}

// putBack writes the club file to its place again.
func (m *Model) putBack() tea.Cmd {
	m.busy = true
	put := m.options.PutBack
	return func() tea.Msg {
		aside, err := put()
		return putBackMsg{aside, err}
	}
}

// isBack takes note that the club file is in its place again, and saves what waits for it.
func (m *Model) isBack(msg putBackMsg) tea.Cmd {
	m.busy = false
	if msg.err != nil {
		m.leaving = false
		m.refuse(msg.err)
		return nil
	}
	t := m.trouble
	m.trouble, m.notice = nil, "the club file is put back whole"
	if msg.aside != "" {
		m.notice += "; what stood there is " + filepath.Base(msg.aside)
	}
	switch {
	case t != nil && t.command != nil:
		m.trouble = t
		return m.tryAgain()
	case m.leaving:
		return tea.Quit
	}
	return nil
}

// placeMsg tells whether the club file is in its place.
type placeMsg struct{ err error }

// look compares the club file's path with the file that is open, beside the screen.
func (m *Model) look() tea.Cmd {
	inPlace := m.options.InPlace
	if inPlace == nil {
		return nil
	}
	return func() tea.Msg { return placeMsg{inPlace()} }
}

// looked takes note of where the club file is.
func (m *Model) looked(err error) {
	switch {
	case m.trouble != nil && m.trouble.command != nil: // told already, and decided by trying again
	case err != nil:
		m.trouble = &trouble{err: err}
	default:
		m.trouble = nil
	}
}

// troubleNext is what to do about the trouble.
func (m *Model) troubleNext() string {
	t, copies := m.trouble, ""
	if m.options.Backup != nil {
		copies = "; " + m.optionsKey() + ", then w writes a copy elsewhere"
	}
	switch {
	case m.asked():
		return dialogNext(m.asking, m.dialogContext(m.asking))
	case m.dialog() != nil && t.displaced():
		return "esc closes this box; then ctrl+b writes the club file back"
	case m.dialog() != nil && !t.damaged():
		return "esc closes this box; then ctrl+r tries again to save what is not saved"
	case t.damaged():
		return m.quitKey() + " quits, and says how the newest backup comes back; ctrl+r looks whether the club file is whole again"
	case t.command == nil && t.displaced():
		return "ctrl+b writes the whole club file back to its place" + copies + ". Nothing is lost while the desk is open."
	case t.command == nil:
		return "ctrl+r looks again" + copies + ". Nothing is lost while the desk is open."
	case t.displaced():
		return "ctrl+b writes the club file back and saves the last action, esc gives the action up" + copies + "."
	}
	return "ctrl+r tries again to save the last action, esc gives it up" + copies + ". Nothing else is lost."
}

// optionsKey is the key of the options where one is now.
func (m *Model) optionsKey() string {
	if m.typing(m.context()) {
		return "ctrl+t"
	}
	return "o"
}

// quitKey is the key that ends the desk where one is now.
func (m *Model) quitKey() string {
	if m.typing(m.context()) {
		return "ctrl+c"
	}
	return "q"
}

// troubleLine tells why something is not saved. Where it is too long the end of it counts, which says
// what became of the file, or what to do; of damage the beginning, which says that it is damage.
func (m *Model) troubleLine() string {
	const cut = "…"
	head := "! not saved: "
	if m.trouble.command == nil {
		head = "! "
	}
	text := oneLine(m.trouble.err.Error())
	if m.trouble.copied != "" {
		text += "; all of it is in the copy " + oneLine(m.trouble.copied)
	}
	if m.trouble.damaged() {
		return line.Cut(head+text, m.width)
	}
	if over := line.Width(head+text) - m.width; over > 0 {
		text = ansi.TruncateLeft(text, over+line.Width(cut), cut)
	}
	return head + text
}

// lookEvery is how often the desk looks for the club file while nothing is saved.
const lookEvery = 10 * time.Second
