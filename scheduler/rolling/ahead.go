package rolling

import (
	"math"
	"slices"

	"club/quadrille/scheduler/night"
)

const (
	aheadChoices = 16 // how many of the best games are judged by what they leave on the bench
	aheadGames   = 3  // how many games after each are thought of
	aheadWidth   = 6  // the window of those
)

// lookAhead takes, among the cheapest choices, the one that costs least together with the games that
// follow. The next game is drawn from those who stay on the bench and the people of the court that will
// free next, and so on: so the same four who came off together are kept from going on together.
func (c *caller) lookAhead(choices []choice) night.Game {
	best, least := choices[0].game, math.Inf(1)
	for _, x := range choices[:min(aheadChoices, len(choices))] {
		if total := x.cost + c.after(x.game); total < least {
			best, least = x.game, total
		}
	}
	return best
}

// after is what the games that can follow cost, if each is the cheapest one. The further ahead a game is,
// the less is sure of it, and the less it counts.
func (c *caller) after(g night.Game) float64 {
	line := slices.Clone(c.window(c.line, aheadWidth+4*aheadGames)) // nobody further back can be reached
	sum, weight := 0.0, 2.0
	for _, next := range c.r.Running[:min(aheadGames, len(c.r.Running))] {
		defer c.met.add(g)()
		line = c.comeOff(line, g, next)
		var cost float64
		var ok bool
		if g, cost, ok = c.cheapest(c.window(line, aheadWidth)); !ok {
			return sum + weight*c.prices.partner // nobody could play: as bad as a repeat
		}
		weight /= 2
		sum += float64(weight * cost)
	}
	return sum
}

// comeOff is the queue without the people of a game that was called, when the next court has freed.
func (c *caller) comeOff(line []call, called, freed night.Game) []call {
	gone := called.Seats()
	line = slices.DeleteFunc(line, func(x call) bool { return slices.Contains(gone[:], x.who[0]) })
	for k := range line {
		line[k].waited += c.pace.interval
	}
	players := freed.Players()
	for _, i := range players {
		if !c.n.Known(i) || !c.n.MayPlayOn(i, c.r.Court) {
			continue
		}
		switch m := c.n.Mate[i]; {
		case m == night.Nobody && c.n.Problem.Format != night.Pairs:
			line = append(line, call{who: []night.Player{i}})
		case m > i && slices.Contains(players, m) && c.n.MayPlayOn(m, c.r.Court):
			line = append(line, call{who: []night.Player{i, m}})
		}
	}
	return line
}

// cheapest is the game with the head of the window that costs least.
func (c *caller) cheapest(window []call) (best night.Game, least float64, ok bool) {
	inTurn := c.waits(window, nil)
	c.fours(window, 1, func(four []night.Player) bool {
		wait := c.waits(window, four) - inTurn
		for _, g := range c.splits(four) {
			if !c.valid(g) {
				continue
			}
			if cost := wait + c.cost(g); !ok || cost < least {
				best, least, ok = g, cost, true
			}
		}
		return true
	})
	return best, least, ok
}
