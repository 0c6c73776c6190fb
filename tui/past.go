package tui

import (
	"errors"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/tui/palette"
	"club/quadrille/tui/ui"
)

// past is an earlier night that is read, as it was when it ended. The desk goes on with tonight behind it: what
// is read is another ledger, to which nothing is ever written.
type past struct {
	ledger *session.Ledger
	names  *ui.Names
	zone   *time.Location
	active ui.ScreenID // where one was
	back   []origin
}

// pastMsg is an earlier night that was read.
type pastMsg struct {
	ledger *session.Ledger
	err    error
	run    int
}

// show makes a context one of the earlier night.
func (p *past) show(c *ui.Context) {
	c.Past, c.Ledger, c.Names = true, p.ledger, p.names
	c.Rotation, c.Hall, c.Advice, c.Fresh = ui.Rotation{}, hall.Hall{}, session.Advice{}, false
}

// title marks the earlier night.
func (p *past) title() string {
	return "night of " + p.ledger.Club().Night().Opened.In(p.zone).Format("2 January 2006")
}

// refusal says why nothing can be done to the earlier night.
func (p *past) refusal() error {
	return errors.New(p.title() + " is only read: esc returns to tonight")
}

// forSafety tells whether a command is done at any time, whatever is read.
func forSafety(c session.Command) bool {
	switch c.(type) {
	case session.HoldPlay, session.ResumePlay, session.NoteClock, session.ReportInjury:
		return true
	}
	return false
}

// earlierNights is the name of the key of the list of earlier nights.
const earlierNights = "earlier nights"

// ofTonightOnly are the keys of the desk that are about the night that goes on: not while an earlier one is read.
var ofTonightOnly = map[string]bool{
	"next step": true, "find": true, "who plays where": true, "undo": true, "redo": true, "options": true, "message to the hall": true,
}

// ofTonight tells whether a screen is about the hall as it is: going there ends the reading of an earlier night.
func ofTonight(id ui.ScreenID) bool { return id == ui.Door || id == ui.Courts || id == ui.Bench }

// earlier lists the nights that can be read.
func (m *Model) earlier() tea.Cmd { return m.show(palette.New(m.nightEntries())) }

// noEarlier is why there is no earlier night.
func (m *Model) noEarlier() string {
	if len(m.nightEntries()) == 0 {
		return "there is no earlier night"
	}
	return ""
}

// openPast reads an earlier night beside the screen, since the log may be long.
func (m *Model) openPast(n *session.Night) tea.Cmd {
	desk, id, run := m.desk, n.ID, m.works+1
	return m.begin(work{what: "reading the night", cancel: func() {}}, func() tea.Msg {
		l, err := desk.Past(id)
		return pastMsg{l, err, run}
	})
}

// readPast shows the standings of an earlier night.
func (m *Model) readPast(msg pastMsg) {
	if !m.finish(msg.run) {
		return // it was cancelled, and nothing but the reading is lost
	}
	if msg.err != nil {
		m.refuse(msg.err)
		return
	}
	p := &past{ledger: msg.ledger, names: ui.NewNames(msg.ledger.Club()), zone: m.now.Location(), active: m.active, back: m.back}
	if m.past != nil {
		p.active, p.back = m.past.active, m.past.back
	}
	m.past, m.active, m.back = p, ui.Standings, nil
	m.surveyScreen()
}

// leavePast goes back to tonight, to where one was.
func (m *Model) leavePast() {
	p := m.past
	m.past, m.active, m.back = nil, p.active, p.back
	m.surveyScreen()
}

// escape is what esc does while an earlier night is read, where nothing else has it.
func (m *Model) escape() ui.Action {
	return ui.Ask(ui.Bind("back to tonight", "esc", "esc"), ui.Own{Do: func() tea.Cmd {
		m.leavePast()
		return nil
	}})
}
