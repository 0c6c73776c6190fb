package session

import (
	"sync"
	"time"
)

const (
	// clockSlack is how far a clock may go astray before it is taken for moved. Clocks that a network
	// keeps right make steps of less.
	clockSlack = 2 * time.Second

	// longestGap is the longest time between two looks at the clock that is taken for time that has
	// passed, where nothing but the clock itself tells: the laptop's battery was flat, the desk was closed
	// and opened again. Nobody plays for longer without an action.
	longestGap = 10 * time.Hour
)

// watch compares a clock, which people and networks set, with the time that has passed.
type watch struct {
	now    func() time.Time
	steady func() time.Duration // time since some moment, never set; nil for what times of now tell

	mu     sync.Mutex
	seen   time.Time     // the clock when it was looked at last, with its monotonic reading if it has one
	passed time.Duration // since the watch was begun

	// What the clock must show is known from one moment, at which it was right: its time, what had passed
	// by then, and how much of the clock's moves the night knew of.
	night  NightID
	right  time.Time
	at     time.Duration
	known  time.Duration
	closed bool // that moment lies before the watch was begun, and nobody knows how long
}

// read is what the clock says, and how it was moved since the night of l knows of it, if it was.
func (w *watch) read(l *Ledger) (now time.Time, moved ClockMoved, ok bool) {
	w.mu.Lock()
	defer w.mu.Unlock()
	now = w.look()
	moved, ok = w.moved(l, now)
	return now, moved, ok
}

// count takes another measure of time, and begins anew.
func (w *watch) count(steady func() time.Duration, l *Ledger) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.steady, w.passed, w.seen = steady, 0, time.Time{}
	w.begin(l, w.look())
}

// look is what the clock says. It also notes how much time has passed.
func (w *watch) look() time.Time {
	now := w.now()
	switch {
	case w.steady != nil:
		w.passed = max(w.passed, w.steady())
	case !w.seen.IsZero():
		w.passed += plausible(now.Sub(w.seen), monotonic(now) && monotonic(w.seen))
	}
	w.seen = now
	return now
}

// monotonic tells whether a time carries a reading of the monotonic clock.
func monotonic(t time.Time) bool { return t != t.Round(0) }

// plausible is how much time has passed between two times of a clock. Where they are sure, it is their
// difference; else a difference that is negative or too long tells of the clock and not of time.
func plausible(d time.Duration, sure bool) time.Duration {
	if sure || d >= 0 && d <= longestGap {
		return max(0, d)
	}
	return 0
}

// begin takes the clock for right now, as a night is opened; on a night that goes on it is right as far
// as the newest record tells.
func (w *watch) begin(l *Ledger, now time.Time) {
	n := l.Night()
	if n == nil {
		w.night = 0
		return
	}
	w.night, w.right, w.at, w.known, w.closed = n.ID, now, w.passed, l.moved, false
	if gap := now.Sub(l.Clock()); gap < -clockSlack || gap > longestGap {
		w.right, w.closed = l.Clock(), gap > 0
	}
}

// moved tells how the clock was moved since the night knows of it, if it was.
func (w *watch) moved(l *Ledger, now time.Time) (ClockMoved, bool) {
	n := l.Night()
	if n == nil {
		return ClockMoved{}, false
	}
	if n.ID != w.night {
		w.begin(l, now)
	}
	told := l.moved - w.known
	by := now.Round(0).Sub(w.right.Round(0)) - (w.passed - w.at) - told
	if by > -clockSlack && by < clockSlack {
		return ClockMoved{}, false
	}
	return clockMoved(by, w.closed && told == 0), true
}

// NoteClock does nothing but give the desk an occasion to write down that its clock was moved.
type NoteClock struct{}

func (NoteClock) decide(*Ledger, Env) ([]Event, error) { return nil, nil }
