package rolling

import (
	"errors"
	"slices"

	"club/quadrille/scheduler/night"
)

// ErrPatience is returned where a court is better left free until the next game is over.
var ErrPatience = errors.New("whoever waits would get a partner again: once the next game is over, new partners can play")

// patientCourts is how many other courts must have a game for one to be left free, so that it is for about a third of
// a game at most.
const patientCourts = 3

// Call is [Next] for a court that calls by itself. To mix more it leaves the court free, with [ErrPatience], where
// every four would repeat partners, and none would need to with the people of the next game to be over, whichever that
// is, unless the organiser put somebody first. It asks only who waits and who plays, not the time, so that the answer stays until somebody comes or goes.
func Call(r Moment) (night.Game, error) {
	c, err := newCaller(r)
	if err != nil {
		return night.Game{}, err
	}
	g, err := c.best()
	if err == nil && !r.ByWait && c.led == 0 && len(r.Running) >= patientCourts && c.again(g) > 0 && c.betterSoon() {
		return night.Game{}, ErrPatience
	}
	return g, err
}

// betterSoon tells whether whoever has waited longest can have a game of new partners after any of the running games.
func (c *caller) betterSoon() bool {
	nobody := night.Team{night.Nobody, night.Nobody}
	for _, g := range c.r.Running {
		line := c.comeOff(slices.Clone(c.line), night.Game{A: nobody, B: nobody}, g)
		found := false
		c.fours(c.window(line, 4*windowWidth), 1, func(four []night.Player) bool {
			for _, g := range c.splits(four) {
				found = found || c.valid(g) && c.again(g) == 0
			}
			return !found
		})
		if !found {
			return false
		}
	}
	return true
}
