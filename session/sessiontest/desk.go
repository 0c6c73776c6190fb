// Package sessiontest has a desk without a disk for the tests of what reads nights.
package sessiontest

import (
	"context"
	"fmt"
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// Begin is when the clock of a new [Desk] stands.
var Begin = time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)

// Desk is a desk of a test, which ends where a command is refused. Its clock stands until the test moves it.
type Desk struct {
	*session.Desk
	T     testing.TB
	Clock time.Time
}

// New returns a desk without a night. People get the identities identity-001, identity-002 and so on, which no name contains.
func New(t testing.TB) *Desk {
	t.Helper()
	d := &Desk{T: t, Clock: Begin}
	ids := 0
	desk, err := session.NewDesk(&session.MemoryLog{}, func() time.Time { return d.Clock }, func() session.PersonID {
		ids++
		return session.PersonID(fmt.Sprintf("identity-%03d", ids))
	})
	if err != nil {
		t.Fatal(err)
	}
	d.Desk = desk
	return d
}

// Open opens a night and checks in so many people, called Person 01, Person 02 and so on.
func Open(t testing.TB, s session.Settings, courts, people int) *Desk {
	t.Helper()
	d := New(t)
	d.Must(session.OpenNight{Name: "test night", Settings: s, Courts: courts})
	for i := range people {
		d.Must(session.AddGuest{Name: fmt.Sprintf("Person %02d", i+1)})
	}
	return d
}

// Flow is the settings of a night of five rounds in a flow.
func Flow(flow session.Flow) session.Settings {
	s := session.DefaultSettings(7)
	s.Flow, s.Rounds = flow, 5
	return s
}

// Must does the commands in turn.
func (d *Desk) Must(commands ...session.Command) {
	d.T.Helper()
	for _, c := range commands {
		if _, err := d.Do(c); err != nil {
			d.T.Fatalf("%T: %v", c, err)
		}
	}
}

// Pass moves the clock.
func (d *Desk) Pass(minutes int) { d.Clock = d.Clock.Add(time.Duration(minutes) * time.Minute) }

// Night is the night that is open, or nil.
func (d *Desk) Night() *session.Night { return d.Ledger().Night() }

// Ahead is the rotation that the desk would show, none where there can be none.
func (d *Desk) Ahead() []session.PlannedRound {
	r, err := session.PlanRotation(context.Background(), d.Ledger(), d.Clock)
	if err != nil {
		return nil
	}
	return r.Rounds
}

// Finish enters the result of a game.
func (d *Desk) Finish(g *session.Game, a, b int, how scoring.How) {
	d.T.Helper()
	f, err := g.Rules.Final(a, b, how)
	if err != nil {
		d.T.Fatal(err)
	}
	d.Must(session.FinishGame{Game: g.ID, Final: f})
}

// On is the game that is called on a court.
func (d *Desk) On(court session.CourtID) *session.Game {
	n := d.Night()
	return n.Game(n.Court(court).Game)
}
