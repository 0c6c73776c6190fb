package session

import (
	"time"

	"club/quadrille/scheduler"
)

// Command is something that somebody wants to happen. It is decided against the state and becomes
// the events of one action, or is refused with an error that says what to do instead.
type Command interface {
	decide(l *Ledger, env Env) ([]Event, error)
}

// Env is what a command may know besides the state.
type Env struct {
	Now   time.Time
	Zone  *time.Location  // of the hall, for times of day
	NewID func() PersonID // a new identity at each call, no other laptop has it
	Pick  Picker          // who plays next on a free court; nil for the scheduler's choice
}

// picker is who chooses the next four: for a court that calls by itself, which may be left free for a while, or for
// one that somebody wants filled.
func (e Env) picker(byItself bool) Picker {
	switch {
	case e.Pick != nil:
		return e.Pick
	case byItself:
		return scheduler.Call
	}
	return scheduler.Next
}

// openNight is the night that a command is about.
func openNight(l *Ledger) (*Night, error) {
	if n := l.Night(); n != nil {
		return n, nil
	}
	return nil, ErrNoNight
}
