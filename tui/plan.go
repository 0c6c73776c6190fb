package tui

import (
	"context"
	"slices"

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
	m.planKey, m.changer = key, m.notice
	m.planRun++
	m.stopBehind()
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
	m.plan.Ready, m.planBegan = false, m.now
	m.survey()
	run := m.planRun
	ctx, cancel := context.WithCancel(context.Background())
	m.cancelPlan = cancel
	ledger, now, shown := m.ledger, m.now, m.shown
	if r, ok := m.shownFor(key); ok {
		r.Change = shown.Change(ledger, r.Rounds)
		return func() tea.Msg { return planMsg{key, run, r, nil} }
	}
	return func() tea.Msg {
		r, err := session.ReplanRotation(ctx, ledger, now, shown)
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
	m.note(rotationWork, m.now.Sub(m.planBegan))
	if msg.err == nil {
		m.plan.Looking.Printed = m.asPrinted()
		m.keepShown(msg.rotation)
		m.tellChange(msg.rotation.Change)
	}
	m.survey()
	if m.cancelPlan != nil {
		m.cancelPlan()
		m.cancelPlan = nil
	}
	if m.callPlanned {
		m.callPlanned = false
		m.finish(m.work.run)
		if cmd := m.callRound(); cmd != nil {
			return cmd
		}
		return m.drain() // it was refused at once: what was typed meanwhile must not wait for another key
	}
	return nil
}

// tellChange says beside what was done last how much of the shown rotation it changed, once people have been
// called. Nothing is said where something else was done meanwhile.
func (m *Model) tellChange(c session.Change) {
	if n := m.ledger.Night(); m.notice != "" && m.notice == m.changer && n != nil && len(n.Rounds) > 0 && c.Kept < c.Games {
		m.change = c.Words(m.names.Short)
	}
}

// shownOnce is a rotation that people have seen, with the state that it is about.
type shownOnce struct {
	key      uint64
	rotation session.Rotation
}

// remember is how many of them are remembered: an undo leads back to what was shown before, and so does a redo.
const remember = 8

// keepShown takes note of the rotation that people see now.
func (m *Model) keepShown(r session.Rotation) {
	m.shown = m.ledger.Show(r)
	m.shownBefore = slices.DeleteFunc(m.shownBefore, func(s shownOnce) bool { return s.key == m.planKey })
	m.shownBefore = append(m.shownBefore, shownOnce{m.planKey, r})
	m.shownBefore = m.shownBefore[max(0, len(m.shownBefore)-remember):]
}

// shownFor is the rotation that people saw when the night was as it is now.
func (m *Model) shownFor(key uint64) (session.Rotation, bool) {
	for _, s := range m.shownBefore {
		if s.key == key {
			return s.rotation, true
		}
	}
	return session.Rotation{}, false
}
