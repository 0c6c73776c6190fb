package session

import (
	"strings"
	"time"

	"club/quadrille/scheduler"
)

// Picker chooses the next game of the rolling flow.
type Picker func(scheduler.Rolling) (scheduler.Game, error)

// NextGame says who plays next on a court that is free, in the rolling flow. It changes nothing.
func NextGame(club *Club, n *Night, court CourtID, now time.Time) (PlannedGame, error) {
	return pickNext(club, n, court, now, scheduler.Next)
}

func pickNext(club *Club, n *Night, court CourtID, now time.Time, pick Picker) (PlannedGame, error) {
	u := newLineup(club, n, now)
	if why := u.tooFew(); why.Cause != Callable {
		return PlannedGame{}, &idleError{why.Words(club, now.Location())}
	}
	g, err := u.next(court, pick)
	if err != nil {
		return PlannedGame{}, &idleError{u.noFour().Words(club, now.Location())}
	}
	return g, nil
}

// idleError tells why no four can be called. It is an [ErrTooFew].
type idleError struct{ why string }

func (e *idleError) Error() string        { return e.why }
func (e *idleError) Is(target error) bool { return target == ErrTooFew }

// newRollingDraw numbers everybody who has been here, and all courts, without regard to rounds.
func newRollingDraw(club *Club, n *Night, now time.Time) *draw {
	return newDrawOf(club, n, now, func(a Attendance) bool { return !a.Arrived.IsZero() })
}

// newDrawOf is newRollingDraw for some of the people of the night.
func newDrawOf(club *Club, n *Night, now time.Time, has func(Attendance) bool) *draw {
	d := &draw{night: n, club: club, now: now, levels: n.levels(club)}
	d.problem.Format, d.problem.Seed = n.Settings.Format, n.Settings.Seed
	for _, a := range n.Roll {
		if !has(a) {
			continue
		}
		p, _ := club.Person(a.Person)
		d.people = append(d.people, a.Person)
		d.problem.People = append(d.problem.People, scheduler.Person{Name: p.Name, Group: strings.ToLower(p.Group), Level: d.levelOf(p)})
	}
	for _, c := range n.Courts {
		d.courts = append(d.courts, c.ID)
		d.problem.Courts = append(d.problem.Courts, scheduler.CourtSpec{Name: string(c.ID), MinLevel: c.Low, MaxLevel: c.High})
	}
	d.bind()
	d.wishes()
	d.met()
	return d
}

// freeCourts lists the open courts without a game.
func (n *Night) freeCourts() []CourtID {
	var out []CourtID
	for _, c := range n.Courts {
		if c.Open && c.Game == 0 {
			out = append(out, c.ID)
		}
	}
	return out
}

// callFree makes the events that fill every free court of a rolling night, one after the other, each on
// the state that the one before leaves. It gives none where there is a reason not to call: see
// [Ledger.Idle].
func (l *Ledger) callFree(env Env) ([]Event, error) {
	n := l.Night()
	if n == nil || !n.Rolls || len(n.freeCourts()) == 0 {
		return nil, nil
	}
	var events []Event
	f := &fold{l.club.clone(), l.last + 1}
	n = f.club.OpenNight()
	for _, court := range n.freeCourts() {
		if why := n.blocked(env.Now); why.Cause != Callable {
			return events, nil
		}
		g, err := pickNext(f.club, n, court, env.Now, env.picker(true))
		if err != nil {
			if len(n.bound(f.club)) > 0 {
				continue // somebody plays only on another court
			}
			return events, nil // the courts after this one have the same people to choose from
		}
		e := GameCalled{Game: GameID(len(n.Games) + 1), Court: court, A: g.A, B: g.B, Terms: n.Settings.Terms()}
		if err := e.apply(f, env.Now); err != nil {
			return nil, err
		}
		events = append(events, e)
	}
	return events, nil
}

// pastClosing tells whether games should no longer call themselves.
func (n *Night) pastClosing(now time.Time) bool {
	return !n.Settings.Closing.IsZero() && !now.Before(n.Settings.Closing)
}

// Waited is how long somebody on the bench has waited, to the second.
func (a Attendance) Waited(now time.Time) time.Duration {
	if a.Waiting.IsZero() || now.Before(a.Waiting) {
		return 0
	}
	return now.Sub(a.Waiting).Truncate(time.Second)
}
