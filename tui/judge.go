package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// fairness is how fair the games of a rolling night were, worked out beside the screen, since it takes the machine a
// while, and only where it is shown.
type fairness struct {
	asked       *session.Ledger // what it is worked out for
	known       *session.Ledger // what certificate is about
	certificate scheduler.Certificate
}

// judgedMsg is a certificate that was worked out.
type judgedMsg struct {
	ledger      *session.Ledger
	certificate scheduler.Certificate
}

// judge works the certificate out, where it is shown and the night has another state than it is known for.
func (m *Model) judge() tea.Cmd {
	if m.active != ui.RotationScreen {
		return nil
	}
	c := m.context()
	n := c.Night()
	if n == nil || n.Settings.Flow != session.Rolling || len(n.Games) == 0 || m.judged.asked == c.Ledger {
		return nil
	}
	m.judged.asked = c.Ledger
	ledger, now := c.Ledger, m.now
	return func() tea.Msg { return judgedMsg{ledger, session.Certify(ledger.Club(), n, now)} }
}

// take takes a certificate, unless it is about a state that has passed.
func (j *fairness) take(msg judgedMsg) {
	if msg.ledger == j.asked {
		j.known, j.certificate = msg.ledger, msg.certificate
	}
}

// of is the certificate of a state, nil while it is not known.
func (j *fairness) of(l *session.Ledger) *scheduler.Certificate {
	if j.known != l {
		return nil
	}
	return &j.certificate
}
