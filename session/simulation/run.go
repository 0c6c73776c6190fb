package simulation

import (
	"context"
	"fmt"
	"time"

	"club/quadrille/session"
)

// Run plays a night through a desk on the log, from the state of the log on, and measures it. The
// log must be empty or hold the same night up to some point. Kept, if not nil, is told the number
// of the newest record after each action, once the action is durable. When ctx is done the night
// stops where it is.
func Run(ctx context.Context, log session.Log, n Night, kept func(last uint64) error) (Report, error) {
	if err := n.Validate(); err != nil {
		return Report{}, err
	}
	now := opening
	for r, err := range log.Records(max(1, log.Last())) { // a night that goes on does so when it was left
		if err != nil {
			return Report{}, err
		}
		now = r.Time
	}
	desk, err := session.NewDesk(log, func() time.Time { return now }, n.newID(log.Last))
	if err != nil {
		return Report{}, err
	}
	desk.PickBy(n.Pick)
	if err := n.begins(desk.Ledger()); err != nil {
		return Report{}, err
	}
	s := newScript(n)
	for {
		if err := ctx.Err(); err != nil {
			return Report{}, fmt.Errorf("the simulation was stopped: %w", err)
		}
		l := desk.Ledger()
		h, more, err := s.next(l)
		if err != nil {
			return Report{}, err
		}
		if !more {
			return measure(l, log)
		}
		now = latest(h.at, l.Clock())
		if l, err = desk.Do(h.command); err != nil {
			return Report{}, fmt.Errorf("at %s of the simulated night: %w", now.Format(time.TimeOnly), err)
		}
		if kept != nil {
			if err := kept(l.Last()); err != nil {
				return Report{}, err
			}
		}
	}
}

// begins refuses a log that holds anything but the beginning of n, so that no club's real file is
// ever filled with people who do not exist.
func (n Night) begins(l *session.Ledger) error {
	club := l.Club()
	if len(club.Nights) == 0 && len(club.People) == 0 {
		return nil
	}
	first := club.Night()
	same := len(club.Nights) == 1 && first.Opened.Equal(opening) && first.Settings == n.settings() && len(first.Courts) == n.Courts
	for _, e := range n.People {
		_, known := club.Named(e.Name)
		same = same && (known || len(club.People) == 0)
	}
	if !same {
		return fmt.Errorf("this file holds other nights or people: a simulation writes only to a file of its own")
	}
	return nil
}
