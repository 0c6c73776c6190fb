package tui

import (
	"context"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// planMsg is a rotation that was worked out beside the screen.
type planMsg struct {
	key      uint64
	run      int // which working out it is: one that was ended early must not pass for a later one
	rotation session.Rotation
	err      error
}

// replan works the rotation out anew when what it depends on has changed. It runs beside the
// screen; a change meanwhile ends it early, and a late answer is recognised by its key.
func (m *Model) replan() tea.Cmd {
	key := m.ledger.DrawKey()
	if key == m.planKey {
		return nil
	}
	m.planKey = key
	if m.cancelPlan != nil {
		m.cancelPlan()
		m.cancelPlan = nil
	}
	n := m.ledger.Night()
	if n == nil || n.Settings.Flow != session.Rounds {
		m.plan = ui.Rotation{Ready: true}
		m.survey()
		return nil
	}
	m.plan.Ready = false
	m.survey()
	m.planRun++
	run := m.planRun
	ctx, cancel := context.WithCancel(context.Background())
	m.cancelPlan = cancel
	ledger, now := m.ledger, m.now
	return func() tea.Msg {
		r, err := session.PlanRotation(ctx, ledger, now)
		return planMsg{key, run, r, err}
	}
}

// planned takes a rotation, unless it is about a state that has passed, and calls the round that
// waited for it.
func (m *Model) planned(msg planMsg) tea.Cmd {
	if msg.key != m.planKey || msg.run != m.planRun {
		return nil
	}
	m.plan = ui.Rotation{Rotation: msg.rotation, Ready: true, Err: msg.err}
	m.survey()
	if m.cancelPlan != nil {
		m.cancelPlan()
		m.cancelPlan = nil
	}
	if m.callPlanned {
		m.busy, m.callPlanned = false, false
		if cmd := m.callRound(); cmd != nil {
			return cmd
		}
		return m.drain() // it was refused at once: what was typed meanwhile must not wait for another key
	}
	return nil
}
