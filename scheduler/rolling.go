package scheduler

import "errors"

// ErrTooFew is returned when the people who wait cannot make one valid game.
var ErrTooFew = errors.New("too few people wait for a game")

// Waiting is somebody who may be called now.
type Waiting struct {
	Player  Player
	Waited  float64 // minutes since the last game or the arrival
	Present float64 // minutes of the night that the person was there
	Games   int     // games that the person played tonight
}

// Rolling states the moment in which a court frees.
type Rolling struct {
	People  []Person
	Courts  []CourtSpec
	Format  Format
	Played  []Game    // games called tonight in the order of their calls, running ones included
	Running []Game    // games on court now, the one expected to finish soonest first
	Waiting []Waiting // who may be called
	Court   Court     // the court that is free

	Together, NeverPartner, NeverMeet []Pair
	LevelLimit                        float64 // as in Problem

	Seed uint64
}

// Next chooses the four who play next on the free court.
func Next(r Rolling) (Game, error) { return QueueNext(r) }

// QueueNext takes the first four of the queue as they stand, the plain way of many halls. It is here
// so that the difference can be shown.
func QueueNext(r Rolling) (Game, error) {
	if len(r.Waiting) < 4 {
		return Game{}, ErrTooFew
	}
	w := r.Waiting
	return Game{r.Court, Team{w[0].Player, w[1].Player}, Team{w[2].Player, w[3].Player}}, nil
}
