package scheduler

import (
	"cmp"
	"slices"
)

// call is somebody who waits, or two who only play together.
type call struct {
	who    []Player
	waited float64 // minutes, of two the longer
	due    float64 // how urgently the next game is due, in games
}

// caller chooses the next game of the rolling flow.
type caller struct {
	n    *night
	r    Rolling
	line []call // most due first
	met  *memory
	d    *dice
}

func newCaller(r Rolling) (*caller, error) {
	p := r.problem()
	if reasons := contradictions(p); len(reasons) > 0 {
		return nil, &Conflict{reasons}
	}
	n := newNight(p)
	c := &caller{n: n, r: r, d: newDice(r.Seed, 2)}
	for _, w := range r.Waiting {
		if !n.known(w.Player) {
			return nil, &Conflict{[]string{"somebody waits who is not in the list of people"}}
		}
	}
	if r.Court < 0 || int(r.Court) >= len(r.Courts) {
		return nil, &Conflict{[]string{"the free court is not in the list of courts"}}
	}
	c.met = newMemory(n.people, r.Played)
	c.queue()
	return c, nil
}

// queue puts those who wait and suit the court in the order in which they are due.
func (c *caller) queue() {
	waits := make(map[Player]Waiting, len(c.r.Waiting))
	for _, w := range c.r.Waiting {
		waits[w.Player] = w
	}
	busy := make(map[Player]bool)
	for _, g := range c.r.Running {
		for _, i := range g.Players() {
			busy[i] = true
		}
	}
	pace := c.pace()
	for _, w := range c.r.Waiting {
		if w != waits[w.Player] || !c.n.fits(w.Player, c.r.Court) {
			continue
		}
		one := call{[]Player{w.Player}, w.Waited, pace.due(w)}
		if m := c.n.mate[w.Player]; m != Nobody {
			other, here := waits[m]
			switch {
			case busy[m] || here && (m < w.Player || !c.n.fits(m, c.r.Court)):
				continue // the partner plays, cannot play here, or brings both in
			case here:
				one.who = append(one.who, m)
				one.waited, one.due = max(one.waited, other.Waited), max(one.due, pace.due(other))
			case c.n.p.Format == Pairs:
				continue
			}
		} else if c.n.p.Format == Pairs {
			continue
		}
		c.line = append(c.line, one)
	}
	slices.SortStableFunc(c.line, func(x, y call) int { return cmp.Compare(y.due, x.due) })
}

// pace is how fast the night goes, learned from those who wait.
type pace struct {
	rate     float64 // games for each minute present
	interval float64 // minutes from one game to the next
}

func (c *caller) pace() pace {
	games, present, longest := 0.0, 0.0, 0.0
	for _, w := range c.r.Waiting {
		games += float64(w.Games)
		present += w.Present
		longest = max(longest, w.Waited)
	}
	if games == 0 || present == 0 {
		return pace{interval: max(longest, 1)}
	}
	return pace{games / present, present / games}
}

// due is how much somebody's next game is due: the wait, in games that others have played meanwhile,
// and half of what the person has had less than the average for the time present. Nobody makes up more
// than one game at once.
func (p pace) due(w Waiting) float64 {
	// the conversion keeps machines that multiply and add in one step from rounding otherwise
	behind := float64(p.rate*w.Present) - float64(w.Games)
	return w.Waited/p.interval + max(-1, min(1, behind))/2
}

// best returns the best game that includes whoever is most due.
func (c *caller) best() (Game, error) {
	if !c.enough() {
		return Game{}, ErrTooFew
	}
	for _, width := range []int{windowWidth, 2 * windowWidth, 4 * windowWidth} {
		if g, ok := c.bestOf(c.window(c.line, width)); ok {
			return g, nil
		}
		if width >= len(c.line) {
			break
		}
	}
	if g, ok := c.first(); ok {
		return g, nil
	}
	return Game{}, ErrTooFew
}

// enough tells whether so many wait that a game is possible by their numbers.
func (c *caller) enough() bool {
	count := [2]int{0, 2}
	for _, x := range c.line {
		for _, i := range x.who {
			if c.n.side == nil {
				count[0]++
			} else {
				count[c.n.side[i]]++
			}
		}
	}
	if c.n.side != nil {
		return count[0] >= 2 && count[1] >= 4
	}
	return count[0] >= 4
}

// windowWidth is how many calls from the head of the queue, of each group on mixed nights, are looked
// at for one game.
const windowWidth = 9

// window returns the head of a queue.
func (c *caller) window(line []call, width int) []call {
	if c.n.side == nil {
		return line[:min(width, len(line))]
	}
	var head []call
	var count [2]int
	for _, x := range line {
		if s := c.n.side[x.who[0]]; count[s] < width || len(x.who) == 2 {
			head = append(head, x)
			count[s]++
		}
	}
	return head
}

// bestOf tries the games of the window, all with its head; when its head has none, the next is head.
func (c *caller) bestOf(window []call) (Game, bool) {
	for len(window) > 0 {
		choices := c.choices(window)
		if len(choices) > 0 {
			return c.lookAhead(choices), true
		}
		window = window[1:]
	}
	return Game{}, false
}

// choice is a possible game with its cost.
type choice struct {
	game Game
	cost float64
}

// choices lists the possible games with the head of the window, the best split of each four, cheapest
// first.
func (c *caller) choices(window []call) []choice {
	var found []choice
	c.fours(window, func(four []Player, due float64) bool {
		if g, cost, ok := c.split(four); ok {
			found = append(found, choice{g, cost + dueWeight*(c.most(window)-due)})
		}
		return true
	})
	shuffle(c.d, found)
	slices.SortStableFunc(found, func(x, y choice) int { return cmp.Compare(x.cost, y.cost) })
	return found
}

// most is the dues of the first four seats of the window together.
func (c *caller) most(window []call) float64 {
	sum, seats := 0.0, 0
	for _, x := range window {
		if seats += len(x.who); seats > 4 {
			break
		}
		sum += x.due * float64(len(x.who))
	}
	return sum
}

// fours hands each four that the calls can make, with the first call among them, in the order of the
// queue, to a function, with the sum of their dues, until it returns false.
func (c *caller) fours(window []call, yield func(four []Player, due float64) bool) {
	var grow func(from int, four []Player, due float64) bool
	grow = func(from int, four []Player, due float64) bool {
		if len(four) == 4 {
			return yield(four, due)
		}
		for k := from; k < len(window); k++ {
			x := window[k]
			if len(four)+len(x.who) > 4 || !c.together(four, x.who) {
				continue
			}
			next := append(slices.Clone(four), x.who...)
			if !grow(k+1, next, due+x.due*float64(len(x.who))) {
				return false
			}
		}
		return true
	}
	if len(window) > 0 {
		head := window[0]
		grow(1, head.who, head.due*float64(len(head.who)))
	}
}

// together tells whether people may join a game: nobody meets somebody to keep apart from, and no group
// is too many.
func (c *caller) together(four, more []Player) bool {
	if c.n.side != nil {
		var count [2]int
		for _, i := range four {
			count[c.n.side[i]]++
		}
		for _, i := range more {
			if count[c.n.side[i]]++; count[c.n.side[i]] > 2 {
				return false
			}
		}
	}
	for _, i := range four {
		for _, j := range more {
			if c.n.wishes != nil && c.n.wishes.apart[c.n.wishes.at(i, j)] {
				return false
			}
		}
	}
	return true
}

// first returns the first valid game in the order of the queue.
func (c *caller) first() (game Game, ok bool) {
	for k := range c.line {
		c.fours(c.line[k:], func(four []Player, _ float64) bool {
			for _, g := range c.splits(four) {
				if c.valid(g) {
					game, ok = g, true
					return false
				}
			}
			return true
		})
		if ok {
			return game, true
		}
	}
	return Game{}, false
}
