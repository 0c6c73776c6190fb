package rolling

import (
	"errors"
	"slices"

	"club/quadrille/scheduler/night"
)

// ErrTooFew is returned when the people who wait cannot make one valid game on the free court.
var ErrTooFew = errors.New("too few people wait for a game on this court: wait for the next court, or loosen a wish")

// Waiting is somebody who may be called now.
type Waiting struct {
	Player  night.Player
	Waited  float64 // minutes since the last game or the arrival
	Present float64 // minutes of the night that the person was there
	Games   int     // games that the person played tonight
}

// Moment states the moment in which a court frees.
type Moment struct {
	People  []night.Person
	Courts  []night.CourtSpec
	Format  night.Format
	Played  []night.Game // games called tonight in the order of their calls, running ones included
	Running []night.Game // games on court now, the one expected to finish soonest first
	Free    []float64    // minutes until each of Running is expected to be over; empty if nobody knows
	Waiting []Waiting    // who may be called
	Court   night.Court  // the court that is free

	Together, NeverPartner, NeverMeet []night.Pair

	Lately []night.Recent // as in Problem

	Pinned []night.Pair   // by decision of the organiser: once both wait they are partners in the next game; see [Moment.Unpinnable]
	First  []night.Player // by decision of the organiser: called before everybody else who waits

	LevelLimit float64 // as in Problem
	Leveling   night.Leveling
	ByWait     bool // strictly by waiting time: nobody is passed over for somebody who has waited less, to mix more

	Seed uint64 // decides between equally good games
}

// Next chooses the four who play next on the free court. Who is pinned or put first always plays, as many of them as
// fit into one game; and else whoever has waited longest. The other
// three come from those next in the queue: those who came off together part, so that people mix, as long as
// nobody waits minutes longer for it than anybody would in turn, and nobody gets a partner again while another four
// can be called. Strictly by waiting time, somebody is passed
// over only for another who has waited about as long. Among these, partners and meetings repeat little, levels balance, whoever had
// fewer games goes first, and those who stay on the bench make a good game with the people of the
// court that will free next. Fixed partners play together or not at all; keep-aparts, groups and court
// walls hold.
//
// The error is [ErrTooFew] when no valid game exists, or a [*Conflict].
func Next(r Moment) (night.Game, error) {
	c, err := newCaller(r)
	if err != nil {
		return night.Game{}, err
	}
	return c.best()
}

// QueueNext takes the first four of the queue who may play together, longest wait first, in the teams in
// which they stand: the plain way of many halls. It is here so that the difference can be shown.
func QueueNext(r Moment) (night.Game, error) {
	c, err := newCaller(r)
	if err != nil {
		return night.Game{}, err
	}
	if c.enough() {
		if g, ok := c.first(); ok {
			return g, nil
		}
	}
	return night.Game{}, ErrTooFew
}

// Clashes lists what makes the moment impossible whoever of the people waits: wishes that contradict each
// other, and groups that make no teams.
func (r Moment) Clashes() []night.Clash { return night.Clashes(r.problem()) }

// problem states the moment as a night without rounds, so that the same checks apply.
func (r Moment) problem() *night.Problem {
	p := &night.Problem{
		Format: r.Format, People: slices.Clone(r.People), Courts: r.Courts, LevelLimit: r.LevelLimit, Leveling: r.Leveling,
		Together: r.together(), NeverPartner: r.NeverPartner, NeverMeet: r.NeverMeet, Seed: r.Seed,
	}
	for i := range p.People {
		p.People[i].Arrive, p.People[i].Leave = 0, 0
	}
	return p
}
