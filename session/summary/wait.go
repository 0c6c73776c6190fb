package summary

import (
	"time"

	"club/quadrille/session"
)

// waits follows who waits for a game, from which time on.
type waits struct {
	n       *session.Night
	since   map[session.PersonID]time.Time
	longest time.Duration
	who     session.PersonID
}

func (w *waits) begin(at time.Time, people ...session.PersonID) {
	for _, id := range people {
		w.since[id] = at
	}
}

// end ends a wait: with a game it counts, else it was the person's own choice.
func (w *waits) end(at time.Time, counts bool, people ...session.PersonID) {
	for _, id := range people {
		if from, ok := w.since[id]; ok && counts && at.Sub(from) > w.longest {
			w.longest, w.who = at.Sub(from), id
		}
		delete(w.since, id)
	}
}

// longestWait is the longest time that somebody who was here to play waited for a game; nil where nobody did for
// a minute. Holds count, since people waited then too. Who went into a game for somebody counts as called with it.
func longestWait(l *session.Ledger, n *session.Night, now time.Time) *Wait {
	w := waits{n: n, since: map[session.PersonID]time.Time{}}
	moved := time.Duration(0) // how much the clock was set by so far: times are compared without it
	calls, ends := map[uint64][]*session.Game{}, map[uint64][]*session.Game{}
	for i := range n.Games {
		g := &n.Games[i]
		calls[g.Call] = append(calls[g.Call], g)
		if g.Final != nil {
			ends[g.End] = append(ends[g.End], g)
		}
	}
	for _, a := range l.Actions() {
		if a.IsClock() {
			for _, e := range a.Events {
				if m, ok := e.(session.ClockMoved); ok {
					moved += m.Moved()
				}
			}
			continue
		}
		if a.Undone || !n.IsOpen() && a.Time.After(n.Closed) {
			continue
		}
		at := a.Time.Add(-moved)
		for _, e := range a.Events {
			w.presence(e, at)
		}
		for _, g := range ends[a.ID] {
			for _, id := range g.Players() {
				if p := n.Attending(id); p != nil {
					w.begin(at, id)
				}
			}
		}
		for _, g := range calls[a.ID] {
			w.end(at, true, g.Players()...)
		}
	}
	if n.IsOpen() {
		for _, p := range n.Bench() {
			w.end(now.Add(-moved), true, p.Person)
		}
	}
	if w.longest < time.Minute {
		return nil
	}
	return &Wait{l.Club().Name(w.who), int(w.longest.Minutes())}
}

// presence notes who comes to wait, and who goes.
func (w *waits) presence(e session.Event, at time.Time) {
	switch e := e.(type) {
	case session.PersonArrived:
		w.begin(at, e.Person)
	case session.PersonReturned:
		w.begin(at, e.Person)
	case session.PersonRested:
		w.end(at, false, e.Person)
	case session.PersonLeft:
		w.end(at, false, e.Person)
	case session.PlayerReplaced:
		w.end(at, true, e.In)
		w.begin(at, e.Out)
	}
}
