package rolling

import (
	"cmp"
	"math"
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// caller chooses the next game of the rolling flow.
type caller struct {
	n    *night.Night
	r    Moment
	line []call // longest wait first, after those who lead it by decision of the organiser
	led  int    // how many calls those are
	pace pace

	prices  prices
	levels  []int   // of everybody, in tenths, 0 = unknown
	longest float64 // the longest wait if everybody is called in turn, in minutes
	met     *memory
	lately  map[[2]night.Player]before // who met on the nights before
	d       *dice.Dice
}

func newCaller(r Moment) (*caller, error) {
	p := r.problem()
	if reasons := night.Contradictions(p); len(reasons) > 0 {
		return nil, &night.Conflict{Reasons: reasons}
	}
	n := night.New(p)
	c := &caller{n: n, r: r, d: dice.New(r.Seed, 2)}
	for _, w := range r.Waiting {
		if !n.Known(w.Player) {
			return nil, &night.Conflict{Reasons: []string{"somebody waits who is not in the list of people"}}
		}
	}
	if r.Court < 0 || int(r.Court) >= len(r.Courts) {
		return nil, &night.Conflict{Reasons: []string{"the free court is not in the list of courts"}}
	}
	c.met, c.pace = newMemory(n.People, r.Played), newPace(r)
	c.prices, c.levels = newPrices(p), make([]int, n.People)
	for i, person := range p.People {
		c.levels[i] = int(math.Round(10 * person.Level))
	}
	c.lately = recall(r.Lately)
	c.queue()
	c.longest = c.longestInTurn()
	return c, nil
}

// best returns the best game that includes whoever has waited longest. To mix more it looks as far down the queue as
// it must for partners who were not partners before.
func (c *caller) best() (night.Game, error) {
	if !c.enough() {
		return night.Game{}, ErrTooFew
	}
	var best night.Game
	fewest := math.MaxInt
	for _, width := range []int{windowWidth, 2 * windowWidth, 4 * windowWidth} {
		if g, ok := c.bestOf(c.window(c.line, width)); ok {
			if again := c.again(g); again < fewest {
				best, fewest = g, again
			}
			if fewest == 0 || c.r.ByWait {
				return best, nil
			}
		}
		if width >= len(c.line) {
			break
		}
	}
	if fewest < math.MaxInt {
		return best, nil
	}
	if g, ok := c.first(); ok {
		return g, nil
	}
	return night.Game{}, ErrTooFew
}

// enough tells whether so many wait that a game is possible by their numbers.
func (c *caller) enough() bool {
	count := [2]int{0, 2}
	for _, x := range c.line {
		for _, i := range x.who {
			if c.n.Side == nil {
				count[0]++
			} else {
				count[c.n.Side[i]]++
			}
		}
	}
	if c.n.Side != nil {
		return count[0] >= 2 && count[1] >= 4
	}
	return count[0] >= 4
}

// windowWidth is how many calls from the head of the queue, of each group on mixed nights, are looked
// at for one game.
const windowWidth = 9

// window returns the head of a queue.
func (c *caller) window(line []call, width int) []call {
	if c.n.Side == nil {
		return line[:min(width, len(line))]
	}
	var head []call
	var count [2]int
	for _, x := range line {
		if s := c.n.Side[x.who[0]]; count[s] < width || len(x.who) == 2 {
			head = append(head, x)
			count[s]++
		}
	}
	return head
}

// bestOf tries the games of the window, all with its head; when its head has none, the next is head.
func (c *caller) bestOf(window []call) (night.Game, bool) {
	for at := range window {
		for heads := max(1, c.led-at); heads > 0; heads-- {
			if choices := c.choices(window[at:], heads); len(choices) > 0 {
				return c.lookAhead(choices), true
			}
		}
	}
	return night.Game{}, false
}

// choice is a possible game with its cost.
type choice struct {
	game night.Game
	cost float64
}

// choices lists the possible games with so many heads of the window, as far as they fit, cheapest first; the dice
// decide on the order of equal ones. To mix more, partners who were partners before are not among them where others
// can be.
func (c *caller) choices(window []call, heads int) []choice {
	var found []choice
	inTurn := c.waits(window, nil)
	c.fours(window, heads, func(four []night.Player) bool {
		wait := c.waits(window, four) - inTurn
		for _, g := range c.splits(four) {
			if c.valid(g) {
				found = append(found, choice{g, wait + c.cost(g)})
			}
		}
		return true
	})
	found = c.fresh(found)
	dice.Shuffle(c.d, found)
	slices.SortStableFunc(found, func(x, y choice) int { return cmp.Compare(x.cost, y.cost) })
	return found
}

// fresh leaves, to mix more, the choices with the fewest partners who were partners before.
func (c *caller) fresh(found []choice) []choice {
	if c.r.ByWait {
		return found
	}
	fewest := math.MaxInt
	for _, x := range found {
		fewest = min(fewest, c.again(x.game))
	}
	return slices.DeleteFunc(found, func(x choice) bool { return c.again(x.game) > fewest })
}

// fours hands each four that the calls can make, with the first so many calls among them as far as these fit into one
// game, in the order of the queue, to a function, until it returns false. The four is only lent.
func (c *caller) fours(window []call, heads int, yield func(four []night.Player) bool) {
	var four [4]night.Player
	var grow func(from, size int) bool
	grow = func(from, size int) bool {
		if size == 4 {
			return yield(four[:])
		}
		for k := from; k < len(window); k++ {
			who := window[k].who
			if size+len(who) > 4 || !c.together(four[:size], who) {
				continue
			}
			copy(four[size:], who)
			if !grow(k+1, size+len(who)) {
				return false
			}
		}
		return true
	}
	size := 0
	for _, x := range window[:min(heads, len(window))] {
		if size+len(x.who) <= 4 && c.together(four[:size], x.who) {
			size += copy(four[size:], x.who)
		}
	}
	if size > 0 {
		grow(min(heads, len(window)), size)
	}
}

// together tells whether people may join a game: nobody meets somebody to keep apart from, and no group
// is too many.
func (c *caller) together(four, more []night.Player) bool {
	if c.n.Side == nil && c.n.Wishes == nil {
		return true
	}
	if c.n.Side != nil {
		var count [2]int
		for _, i := range four {
			count[c.n.Side[i]]++
		}
		for _, i := range more {
			if count[c.n.Side[i]]++; count[c.n.Side[i]] > 2 {
				return false
			}
		}
	}
	for _, i := range four {
		for _, j := range more {
			if c.n.Wishes != nil && c.n.Wishes.Apart[c.n.Wishes.At(i, j)] {
				return false
			}
		}
	}
	return true
}

// first returns the first valid game in the order of the queue.
func (c *caller) first() (game night.Game, ok bool) {
	for k := range c.line {
		c.fours(c.line[k:], 1, func(four []night.Player) bool {
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
	return night.Game{}, false
}
