package rolling

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"club/quadrille/scheduler/night"
)

// ErrNoGameWith is returned when no valid game has a person in it together with whoever plays next for
// certain.
var ErrNoGameWith = errors.New("nobody may put these people on one court")

// Weighed is a game with what weighs for and against it when the next four are chosen. Costs are in hundredths of
// what a repeated partner weighs.
type Weighed struct {
	Game  night.Game
	First night.Player // who is called whatever it costs, having waited longest
	Wait  float64      // what it costs that it does not follow the order of the queue
	Four  float64      // what the four cost by themselves: who has met, wishes, levels
	After float64      // what the games cost that can follow

	Partners int     // how often the partners of it were partners before, without those who always are
	Met      int     // how often two of the four were in one game before
	CameOff  int     // pairs of the four who came off court together
	Gap      float64 // how far the levels of the teams are apart, 0 when a level is unknown
	Barred   bool    // it has more such partners than the game that is called, which rules it out
}

// Cost is what is compared: the cheapest game is called.
func (w Weighed) Cost() float64 { return w.Wait + w.Four + w.After }

// WhyNot weighs the game that [Next] chooses and the best one that has a certain person who waits: in both
// plays whoever is called for certain. Both are the same when the person is called. The error is
// [ErrNoGameWith] when no valid game has both, with taken all the same, or one of those of [Next].
func WhyNot(r Moment, who night.Player) (taken, with Weighed, err error) {
	c, err := newCaller(r)
	if err != nil {
		return Weighed{}, Weighed{}, err
	}
	g, err := c.best()
	if err != nil {
		return Weighed{}, Weighed{}, err
	}
	window := c.reaching(append(g.Players(), who))
	taken = c.weigh(window, g)
	if slices.Contains(g.Players(), who) {
		return taken, taken, nil
	}
	with, ok := c.bestWith(window, who)
	if !ok {
		return taken, Weighed{}, ErrNoGameWith
	}
	with.Barred = !r.ByWait && with.Partners > taken.Partners
	return taken, with, nil
}

// reaching is the smallest window in which all of some people are, from the first of them who is called.
func (c *caller) reaching(people []night.Player) []call {
	width := windowWidth
	var before [2]int
	for _, x := range c.line {
		side := 0
		if c.n.Side != nil {
			side = c.n.Side[x.who[0]]
		}
		if before[side]++; slices.Contains(people, x.who[0]) {
			width = max(width, before[side])
		}
	}
	window := c.window(c.line, width)
	head := slices.IndexFunc(window, func(x call) bool { return slices.Contains(people[:4], x.who[0]) })
	return window[max(0, head):]
}

// bestWith is the cheapest game of the head of the window with somebody. The others come from so many at
// the head as [Next] looks at.
func (c *caller) bestWith(window []call, who night.Player) (best Weighed, ok bool) {
	at := slices.IndexFunc(window, func(x call) bool { return slices.Contains(x.who, who) })
	if at < 1 || len(window[0].who)+len(window[at].who) > 4 || !c.together(window[0].who, window[at].who) {
		return Weighed{}, false
	}
	var found []choice
	inTurn := c.waits(window, nil)
	c.completed(window, at, func(four []night.Player) {
		wait := c.waits(window, four) - inTurn
		for _, g := range c.splits(four) {
			if c.valid(g) {
				found = append(found, choice{g, wait + c.cost(g)})
			}
		}
	})
	found = c.fresh(found)
	slices.SortStableFunc(found, func(x, y choice) int { return cmp.Compare(x.cost, y.cost) })
	least := math.Inf(1)
	for _, x := range found[:min(aheadChoices, len(found))] {
		if total := x.cost + c.after(x.game); total < least {
			best, least = c.weigh(window, x.game), total
		}
	}
	return best, len(found) > 0
}

// completed hands each four that has the head of the window and the call at a place to a function.
func (c *caller) completed(window []call, at int, yield func(four []night.Player)) {
	others := slices.Delete(slices.Clone(window), at, at+1)[1:]
	others = c.window(others, windowWidth)
	place := func(i night.Player) int {
		return slices.IndexFunc(window, func(x call) bool { return slices.Contains(x.who, i) })*2 + night.One(c.n.Mate[i] != night.Nobody && c.n.Mate[i] < i)
	}
	var grow func(from int, four []night.Player)
	grow = func(from int, four []night.Player) {
		if len(four) == 4 {
			inLine := slices.Clone(four) // in which teams are made: so the games are those of Next
			slices.SortFunc(inLine, func(i, j night.Player) int { return cmp.Compare(place(i), place(j)) })
			yield(inLine)
			return
		}
		for k := from; k < len(others); k++ {
			x := others[k]
			if len(four)+len(x.who) <= 4 && c.together(four, x.who) {
				grow(k+1, append(slices.Clone(four), x.who...))
			}
		}
	}
	grow(0, append(slices.Clone(window[0].who), window[at].who...))
}

// weigh tells what a game costs among those of a window, and why.
func (c *caller) weigh(window []call, g night.Game) Weighed {
	players, unit := g.Players(), 100/c.prices.partner
	w := Weighed{
		Game: g, First: window[0].who[0],
		Wait: unit * (c.waits(window, players) - c.waits(window, nil)), Four: unit * c.cost(g), After: unit * c.after(g),
	}
	for x, i := range players {
		for _, j := range players[:x] {
			m := c.met.of(i, j)
			w.Met += int(m.P) + int(m.O)
			w.CameOff += night.One(c.met.last(i, j))
		}
	}
	w.Partners = c.again(g)
	gap, _ := c.gap(g.Seats())
	w.Gap = float64(gap) / 10
	return w
}
