package timeline

import (
	"time"

	"club/quadrille/session"
)

// tale is what only the actions of the night tell: when play was held and courts were closed, and by how much
// the clock was set after each.
type tale struct {
	holds []Span
	shut  map[session.CourtID][]Span
	moves []move
}

// move is a setting of the clock.
type move struct {
	action uint64
	by     time.Duration
}

// after is by how much the clock was set after an action.
func (t tale) after(action uint64) time.Duration {
	var sum time.Duration
	for _, m := range t.moves {
		if m.action > action {
			sum += m.by
		}
	}
	return sum
}

// readTale reads the actions that stand. What goes on still ends now.
func readTale(l *session.Ledger, now time.Time) tale {
	t := tale{shut: map[session.CourtID][]Span{}}
	actions := l.Actions()
	for _, a := range actions {
		for _, e := range a.Events {
			if m, ok := e.(session.ClockMoved); ok {
				t.moves = append(t.moves, move{a.ID, m.Moved()})
			}
		}
	}
	held, closed := false, map[session.CourtID]bool{}
	end := func(spans []Span, at time.Time) {
		if k := len(spans); k > 0 {
			spans[k-1].Until = at
		}
	}
	for _, a := range actions {
		if a.Undone || a.IsUndo() {
			continue
		}
		at := a.Time.Add(t.after(a.ID))
		for _, e := range a.Events {
			switch e := e.(type) {
			case session.PlayHeld:
				t.holds, held = append(t.holds, Span{From: at, Until: now, Why: e.Why}), true
			case session.PlayResumed:
				if held {
					end(t.holds, at)
				}
				held = false
			case session.CourtClosed:
				if !closed[e.Court] {
					t.shut[e.Court] = append(t.shut[e.Court], Span{From: at, Until: now})
				}
				closed[e.Court] = true
			case session.CourtOpened:
				if closed[e.Court] {
					end(t.shut[e.Court], at)
				}
				closed[e.Court] = false
			}
		}
	}
	return t
}
