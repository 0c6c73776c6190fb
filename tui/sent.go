package tui

import (
	"errors"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/courtside"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Sent is a score that came from a court's page. It waits for its turn as keys do. Answer is told once what became of
// it, in words for whoever sent it, and must not wait.
type Sent struct {
	Score  session.ProposeScore
	Answer func(error)
}

// sentMsg is a score that was decided on.
type sentMsg struct {
	ledger *session.Ledger
	err    error
	answer func(error)
}

// errNotNow is what somebody at a court is told where the desk cannot save anything.
var errNotNow = errors.New("the desk cannot save a score just now: tell it there")

// hear decides on a score that came from a court.
func (m *Model) hear(s Sent) tea.Cmd {
	if m.waits() {
		s.Answer(errNotNow)
		return nil
	}
	m.busy = true
	desk := m.desk
	return func() tea.Msg {
		l, err := desk.Do(s.Score)
		if l != nil {
			l.Places()
		}
		return sentMsg{l, err, s.Answer}
	}
}

// heard takes what became of a score from a court. It touches nothing that the organiser has open; what passed by
// itself is told as what the organiser did.
func (m *Model) heard(msg sentMsg) {
	m.busy = false
	fresh := m.ledger.Last() != m.seen
	passed := false
	if l := msg.ledger; l != nil {
		if a, ok := l.NextUndo(); ok && msg.err == nil {
			_, before := m.ledger.Action(a.ID)
			passed = !before
		}
		m.take(l)
		switch {
		case passed:
			m.change, m.notice, m.called = "", lastDone(l), l.NewestCalls()
		case !fresh: // a score that waits makes no call new again
			m.seen = l.Last()
		}
	}
	var unsaved *session.KeepError
	if errors.As(msg.err, &unsaved) || errors.Is(msg.err, session.ErrSavedAfterAll) {
		msg.err = errNotNow
	}
	msg.answer(msg.err)
}

// showCourts tells the pages of the courts what stands there.
func (m *Model) showCourts() {
	if p := m.options.Phones; p != nil {
		p.Courts(courtside.Of(m.ledger, m.now))
	}
}

// courtScoresItem is the choice about scores from the courts in the menu of the night.
func (m *Model) courtScoresItem() dialog.Item {
	item := dialog.Item{Key: "c", Label: "scores from the courts: now off", Intent: ui.Later{Make: func() ui.Intent { return ui.Show{Dialog: m.courtScoresMenu()} }}}
	if choice := m.night().CourtScores; choice != nil && choice.On {
		item.Label = "scores from the courts: now they " + choice.Pass.String()
	}
	if m.options.Phones == nil {
		item.Why = "it needs a club file"
	}
	return item
}

// courtScoresMenu asks whether courts may send scores, and how those pass.
func (m *Model) courtScoresMenu() *dialog.Menu {
	items := []dialog.Item{{Key: "0", Label: "off", Intent: ui.Do{Command: session.ChooseCourtScores{}}}}
	for i, pass := range session.Passings() {
		items = append(items, dialog.Item{Key: string('1' + rune(i)), Label: "on: they " + pass.String(), Intent: ui.Later{Make: func() ui.Intent {
			return ui.Do{Command: session.ChooseCourtScores{On: true, Pass: pass, Secret: m.secret()}}
		}}})
	}
	return dialog.NewMenu("Scores from the courts, for tonight", items...).Noting(
		"Each court has a code of its own, on its slip and at m, q. Whoever has it can send one score for the game that goes on there, and nothing else. " +
			"It needs the page for phones (o, p).")
}

// secret makes the secret of a night's codes.
func (m *Model) secret() string {
	if m.options.NewSecret == nil {
		return ""
	}
	return m.options.NewSecret()
}

// showCourtCode shows the code that opens a court's page, for whoever stands at the table.
func (m *Model) showCourtCode(id session.CourtID) ui.Intent {
	n := m.night()
	switch {
	case n == nil || n.CourtCode(id) == "":
		return ui.Refuse{Err: errors.New("scores from the courts are off: o, then c, lets courts send them")}
	case m.options.Phones == nil:
		return ui.Refuse{Err: errors.New("this desk has no page for phones: it needs a club file")}
	}
	if url, _ := m.options.Phones.Address(); url == "" {
		return ui.Refuse{Err: errors.New("the page for phones is closed: o, then p, opens it")}
	}
	return ui.Show{Dialog: dialog.NewWhole("Court "+string(id)+": send the score", func(c ui.Context) []string {
		url, code := m.options.Phones.Court(n.CourtCode(id))
		if url == "" {
			return line.Wrap("The page for phones is closed.", c.Width)
		}
		return codeLines(c, url, code)
	})}
}
