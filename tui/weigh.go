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
	run     int
}

// weigh works out beside the screen what a decision by hand costs. Keys wait until that is known.
func (m *Model) weigh(c session.Command) tea.Cmd {
	ledger, now, shown, run := m.ledger, m.now, m.shown, m.works+1
	ctx, cancel := context.WithCancel(context.Background())
	return m.begin(work{what: "working out what it costs", cancel: cancel}, func() tea.Msg {
		defer cancel()
		cost, err := session.Weigh(ctx, ledger, c, now, shown)
		return weighedMsg{c, cost, err, run}
	})
}

// weighed shows the cost and asks. What was typed meanwhile is no answer to it.
func (m *Model) weighed(msg weighedMsg) {
	if !m.finish(msg.run) {
		return // it was cancelled
	}
	m.queue = nil
	if msg.err != nil {
		m.refuse(msg.err)
		return
	}
	m.show(hand.NewCost(m.context(), msg.command, msg.cost))
}
