package tui

import (
	"context"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/hand"
)

// weighedMsg is what a decision by hand costs, or why it cannot be taken.
type weighedMsg struct {
	command session.Command
	cost    session.HandCost
	err     error
}

// weigh works out beside the screen what a decision by hand costs. Keys wait until that is known.
func (m *Model) weigh(c session.Command) tea.Cmd {
	m.busy, m.weighing = true, true
	ledger, now := m.ledger, m.now
	return func() tea.Msg {
		cost, err := session.Weigh(context.Background(), ledger, c, now)
		return weighedMsg{c, cost, err}
	}
}

// weighed shows the cost and asks. What was typed meanwhile is no answer to it.
func (m *Model) weighed(msg weighedMsg) {
	m.busy, m.weighing, m.queue = false, false, nil
	if msg.err != nil {
		m.refuse(msg.err)
		return
	}
	m.show(hand.NewCost(m.context(), msg.command, msg.cost))
}
