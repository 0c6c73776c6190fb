package tui

import (
	"context"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/hand"
	"club/quadrille/tui/ui"
)

// workedOutMsg is a box that was worked out beside the screen, or why there is none.
type workedOutMsg struct {
	box func(ui.Context) ui.Dialog
	err error
	run int
}

// workOut works a box out beside the screen. Keys wait until it is shown; esc cancels it.
func (m *Model) workOut(what string, box func(context.Context) (func(ui.Context) ui.Dialog, error)) tea.Cmd {
	run := m.works + 1
	ctx, cancel := context.WithCancel(context.Background())
	return m.begin(work{what: what, cancel: cancel}, func() tea.Msg {
		defer cancel()
		made, err := box(ctx)
		return workedOutMsg{made, err, run}
	})
}

// workedOut shows the box. What was typed meanwhile is no answer to it.
func (m *Model) workedOut(msg workedOutMsg) {
	if !m.finish(msg.run) {
		return // it was cancelled
	}
	m.queue = nil
	if msg.err != nil {
		m.refuse(msg.err)
		return
	}
	m.show(msg.box(m.context()))
}

// weigh works out what a decision by hand costs, and asks.
func (m *Model) weigh(command session.Command) tea.Cmd {
	ledger, now, shown := m.ledger, m.now, m.shown
	return m.workOut("working out what it costs", func(ctx context.Context) (func(ui.Context) ui.Dialog, error) {
		cost, err := session.Weigh(ctx, ledger, command, now, shown)
		return func(c ui.Context) ui.Dialog { return hand.NewCost(c, command, cost) }, err
	})
}
