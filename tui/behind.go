package tui

import (
	"context"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// behind is the work behind the screen once a rotation is shown: other ways to plan it, and better rounds. There is
// one piece of it at a time, so that it takes no more than one core, and it rests between them.
type behind struct {
	run     int  // the rotation that it is about, see Model.planRun
	running bool // a piece is on its way
	cancel  context.CancelFunc
	others  []session.Choice // ways to plan other than the one that is shown
	looked  bool             // they are worked out
	slice   uint64           // pieces of looking for better rounds that are done
	idle    int              // those since the last find
	settled bool
	from    int // repeated meetings before the first piece
}

// waysMsg are the ways that were worked out behind the screen.
type waysMsg struct {
	run    int
	others []session.Choice
	err    error
}

// improvedMsg is what a piece of looking for better rounds came to.
type improvedMsg struct {
	run      int
	rotation session.Rotation
	found    bool
	err      error
}

// workBehind begins the next piece of work behind the screen, nil where there is none or one is on its way.
func (m *Model) workBehind() tea.Cmd {
	b := &m.behind
	if m.options.Slices <= 0 || b.running || !m.plan.Ready || m.plan.Err != nil || len(m.plan.Rounds) == 0 || m.ledger.Night().Settings.Format == scheduler.Ladder {
		return nil // on a ladder the results decide, and there is nothing to look for
	}
	if b.run != m.planRun {
		m.behind = behind{run: m.planRun, from: m.plan.Certificate.MeetingEvenness.Value}
	}
	if m.active == ui.RotationScreen && !b.looked {
		return m.lookForWays()
	}
	if b.settled || m.plan.Looking.Printed {
		return nil
	}
	return m.lookForBetter()
}

// stopBehind ends the piece of work that is on its way: it is about a rotation that has passed.
func (m *Model) stopBehind() {
	if m.behind.cancel != nil {
		m.behind.cancel()
	}
}

// context begins a piece.
func (b *behind) context() context.Context {
	ctx, cancel := context.WithCancel(context.Background())
	b.running, b.cancel = true, cancel
	return ctx
}

func (m *Model) lookForWays() tea.Cmd {
	ctx, run, ledger, now := m.behind.context(), m.planRun, m.ledger, m.now
	return func() tea.Msg {
		others, err := session.Ways(ctx, ledger, now)
		return waysMsg{run, others, err}
	}
}

// restBetween is the pause between two pieces of looking for better rounds, so that a slow laptop keeps time for keys.
const restBetween = 200 * time.Millisecond

func (m *Model) lookForBetter() tea.Cmd {
	ctx, run, ledger, now := m.behind.context(), m.planRun, m.ledger, m.now
	shown, slice := m.plan.Rotation, m.behind.slice
	return tea.Tick(m.rest, func(time.Time) tea.Msg {
		r, found, err := session.ImproveRotation(ctx, ledger, now, shown, slice)
		return improvedMsg{run, r, found, err}
	})
}

// pieceDone takes note that a piece is no longer on its way, and tells whether it is about what is shown.
func (m *Model) pieceDone(run int) bool {
	m.behind.running = false
	m.stopBehind()
	return run == m.planRun && m.plan.Ready
}

// waysFound takes other ways to plan.
func (m *Model) waysFound(msg waysMsg) {
	if !m.pieceDone(msg.run) {
		return
	}
	m.behind.looked = true // also where it failed: the rotation says what is wrong with the night
	if msg.err == nil {
		m.behind.others = msg.others
	}
	m.compare()
	m.survey()
}

// improved takes better rounds, unless a call is on its way: what is called is what was shown then. It settles when
// so many pieces one after the other found nothing.
func (m *Model) improved(msg improvedMsg) {
	if !m.pieceDone(msg.run) || m.busy || m.plan.Looking.Printed {
		return
	}
	b := &m.behind
	b.slice++
	b.idle++
	if msg.found {
		b.idle = 0
		m.plan.Rotation = msg.rotation
		m.keepShown(msg.rotation)
		m.compare()
	}
	b.settled = msg.err != nil || b.idle >= m.options.Slices || m.plan.Certificate.MeetingEvenness.Left() <= 0 && b.idle > 0
	m.plan.Looking = ui.Looking{From: b.from, Settled: b.settled, Begun: true}
	m.survey()
}

// compare sets the ways beside what is shown.
func (m *Model) compare() {
	m.plan.Ways = session.Beside(m.behind.others, m.ledger, m.now, m.plan.Rotation)
}
