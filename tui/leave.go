package tui

import (
	"errors"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// Unsaved is what the desk was left with that is not in the club file at its path.
type Unsaved struct {
	Command session.Command // what could not be saved, nil if the club file is only not in its place
	Action  string          // the same in words, "" for nil
	Err     error           // why
	Copied  string          // a copy of the club file, written since, that has all of it; "" if there is none
	GivenUp bool            // the organiser was asked, and left all the same
}

// Left is what the desk was left with, nil if everything is saved.
func (m *Model) Left() *Unsaved {
	if m.trouble == nil {
		return nil
	}
	t := m.trouble
	return &Unsaved{t.command, t.action, t.err, t.copied, m.givenUp}
}

// leaveMsg tells where the club file is when the desk shall end.
type leaveMsg struct{ err error }

// leave ends the desk, if everything is saved. Else it asks once.
func (m *Model) leave() tea.Cmd {
	if m.asked() {
		m.givenUp = true
		return tea.Quit
	}
	inPlace := m.options.InPlace
	if inPlace == nil {
		return m.askBeforeLeaving()
	}
	m.busy = true
	return func() tea.Msg { return leaveMsg{inPlace()} }
}

// askBeforeLeaving names what is not saved and what can be done, if there is anything.
func (m *Model) askBeforeLeaving() tea.Cmd {
	t := m.trouble
	if t == nil {
		return tea.Quit
	}
	m.leaving = false
	title := "Not saved: " + t.action
	switch {
	case t.command == nil && t.damaged():
		title = "The club file is damaged"
	case t.command == nil && t.displaced():
		title = "The club file is not in its place"
	case t.command == nil:
		title = "The club file does not answer"
	}
	save, lose := t.choices()
	noFile, write := "", "write a backup of the file elsewhere, which has all of it"
	switch {
	case m.options.Backup == nil:
		noFile = "nothing of this is kept"
	case t.damaged():
		noFile, write = "the file is damaged", "write a backup of the file elsewhere"
	}
	m.asking = dialog.NewMenu(title,
		dialog.Item{Key: "s", Label: save, Intent: ui.Quit{Save: true}},
		dialog.Item{Key: "w", Label: write, Intent: ui.Show{Dialog: backupForm()}, Why: noFile},
		dialog.Item{Key: "x", Label: lose, Intent: ui.Quit{}},
		dialog.Item{Key: "c", Label: "carry on", Intent: ui.Close{}},
	)
	return m.show(m.asking)
}

// choices are what can be done before leaving, in words: how to save it all, and what is lost otherwise.
func (t *trouble) choices() (save, lose string) {
	waits := t.command != nil
	switch {
	case t.displaced() && waits:
		save, lose = "write the club file back to its place and save it, then quit", "quit without it: it is lost"
	case t.displaced():
		save, lose = "write it back to its place, then quit", "quit, and leave nothing in its place"
	case waits:
		save, lose = "try again to save it, then quit", "quit without it: it is lost"
	default:
		save, lose = "look again, then quit", "quit all the same"
	}
	var file interface{ Gone() bool }
	if errors.As(t.err, &file) && file.Gone() {
		lose = "quit: the whole club file is lost, all nights of it"
	}
	if t.damaged() {
		lose = "quit, and be told which backup there is"
	}
	if t.copied != "" {
		lose = "quit: it is in the copy " + t.copied
	}
	return save, lose
}

// asked tells whether the question stands on the screen: who quits once more means it.
func (m *Model) asked() bool { return m.asking != nil && m.dialog() == m.asking }

// quit does what the answer was.
func (m *Model) quit(i ui.Quit) tea.Cmd {
	t := m.trouble
	switch {
	case t == nil:
		return tea.Quit
	case !i.Save:
		m.givenUp = true
		return tea.Quit
	}
	m.leaving = true
	switch {
	case t.displaced() && m.options.PutBack != nil:
		return m.putBack()
	case t.command == nil:
		m.trouble = nil
		return m.leave()
	}
	return m.tryAgain()
}
