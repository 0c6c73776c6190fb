package simulation

import (
	"fmt"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/roster"
)

// Night says what kind of night to play. Equal nights give equal records.
type Night struct {
	People  []roster.Entry // who comes; see [Invented]
	Courts  int
	Rounds  int // rounds to play; 0 for as many as fit
	Minutes int // from the first call to closing time; 0 for no closing time
	Flow    session.Flow
	Format  scheduler.Format
	Scoring scoring.Rules
	ByRally int // so many courts score rally by rally, the others enter final scores
	Late    int // so many of those whose arrival the roster does not state come late
	Leave   int // so many of those whose departure the roster does not state go early
	Seed    uint64
	Pick    session.Picker // who plays next in the rolling flow; nil for the scheduler's choice
}

const (
	// doors is how long before the first call people begin to come.
	doors = 10 * time.Minute
	// slot is the time in minutes that a round of the rounds flow takes: its longest game and the
	// way to the next court.
	slot = 20
	// defaultRounds is how long a night lasts of which neither rounds nor minutes are given.
	defaultRounds = 8
)

// opening is when the doors of every simulated night open. Rosters with times of day are about the
// evening from then on.
var opening = time.Date(2026, time.January, 8, 18, 50, 0, 0, time.UTC)

// Validate says what is wrong with n, and nil when it can be played.
func (n Night) Validate() error {
	switch {
	case len(n.People) < 4:
		return fmt.Errorf("a night needs four people or more, not %d", len(n.People))
	case n.Courts < 1 || n.Courts > session.MaxCourts:
		return fmt.Errorf("a night needs 1 to %d courts, not %d", session.MaxCourts, n.Courts)
	case n.Minutes < 0 || n.Minutes > 12*60:
		return fmt.Errorf("a night lasts up to %d minutes, not %d", 12*60, n.Minutes)
	case n.Late < 0 || n.Leave < 0 || n.Late+n.Leave > len(n.People)-4:
		return fmt.Errorf("%d who come late and %d who leave early are too many of %d: four must be there throughout", n.Late, n.Leave, len(n.People))
	}
	return n.settings().Validate()
}

// settings are what the organiser of the night would choose.
func (n Night) settings() session.Settings {
	s := session.DefaultSettings(n.Seed)
	s.Flow, s.Format, s.Scoring, s.Slot = n.Flow, n.Format, n.Scoring, slot
	if s.Rounds = n.Rounds; s.Rounds == 0 {
		s.Rounds = defaultRounds
		if n.Minutes > 0 {
			s.Rounds = max(1, n.Minutes/slot)
		}
	}
	if n.Minutes > 0 {
		s.Closing = n.firstCall().Add(time.Duration(n.Minutes) * time.Minute)
	} else if n.Flow == session.Rolling {
		s.Closing = n.firstCall().Add(n.length())
	}
	return s
}

// firstCall is when play begins.
func (n Night) firstCall() time.Time { return opening.Add(doors) }

// length is about how long play goes on.
func (n Night) length() time.Duration {
	switch {
	case n.Minutes > 0:
		return time.Duration(n.Minutes) * time.Minute
	case n.Rounds > 0:
		return time.Duration(n.Rounds) * slot * time.Minute
	}
	return defaultRounds * slot * time.Minute
}
