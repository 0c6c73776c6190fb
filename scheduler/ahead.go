package scheduler

import (
	"cmp"
	"math"
	"slices"
)

// aheadChoices is how many of the best games are judged by what they leave on the bench.
const aheadChoices = 8

// lookAhead takes, among the cheapest choices, the one that together with the best next game costs
// least. The next game is drawn from those who stay on the bench and the people of the court that will
// free next: so the same four who came off together are kept from going on together.
func (c *caller) lookAhead(choices []choice) Game {
	if len(c.r.Running) == 0 {
		return choices[0].game
	}
	best, least := choices[0].game, math.Inf(1)
	for _, x := range choices[:min(aheadChoices, len(choices))] {
		if total := x.cost + c.after(x.game)/2; total < least {
			best, least = x.game, total
		}
	}
	return best
}

// after is the cost of the best game that can follow once the next court frees.
func (c *caller) after(g Game) float64 {
	left := slices.DeleteFunc(slices.Clone(c.line), func(x call) bool {
		return slices.Contains(g.Players(), x.who[0])
	})
	for _, i := range c.r.Running[0].Players() {
		if c.n.known(i) && c.n.mate[i] == Nobody && c.n.fits(i, c.r.Court) {
			left = append(left, call{who: []Player{i}})
		}
	}
	slices.SortStableFunc(left, func(x, y call) int { return cmp.Compare(y.due, x.due) })
	least := math.Inf(1)
	window := c.window(left, aheadWidth)
	c.fours(window, func(four []Player, due float64) bool {
		if _, cost, ok := c.split(four); ok {
			least = min(least, cost+dueWeight*(c.most(window)-due))
		}
		return true
	})
	if math.IsInf(least, 1) {
		return partnerWeight // nobody could play: as bad as a repeat
	}
	return least
}

// aheadWidth is the window of the game after the next.
const aheadWidth = 6
