package rolling

import (
	"cmp"
	"slices"

	"club/quadrille/scheduler/night"
)

// call is somebody who waits, or two who only play together.
type call struct {
	who    []night.Player
	waited float64 // minutes, of two the longer
	behind float64 // games fewer than others for the time present, of two the more
}

// queue puts those who wait and suit the court in the order of their waits. Who came off together stands
// in the order of who had fewer games for the time present.
func (c *caller) queue() {
	waits := make(map[night.Player]Waiting, len(c.r.Waiting))
	for _, w := range c.r.Waiting {
		waits[w.Player] = w
	}
	busy := make(map[night.Player]bool)
	for _, g := range c.r.Running {
		for _, i := range g.Players() {
			busy[i] = true
		}
	}
	for _, w := range c.r.Waiting {
		if w != waits[w.Player] || !c.n.MayPlayOn(w.Player, c.r.Court) {
			continue
		}
		one := call{[]night.Player{w.Player}, w.Waited, c.pace.behind(w)}
		if m := c.n.Mate[w.Player]; m != night.Nobody {
			other, here := waits[m]
			switch {
			case busy[m] || here && (m < w.Player || !c.n.MayPlayOn(m, c.r.Court)):
				continue // the partner plays, cannot play here, or brings both in
			case here:
				one.who = append(one.who, m)
				one.waited, one.behind = max(one.waited, other.Waited), max(one.behind, c.pace.behind(other))
			case c.n.Problem.Format == night.Pairs:
				continue
			}
		} else if c.n.Problem.Format == night.Pairs {
			continue
		}
		c.line = append(c.line, one)
	}
	slices.SortStableFunc(c.line, func(x, y call) int {
		return cmp.Or(cmp.Compare(y.waited, x.waited), cmp.Compare(y.behind, x.behind))
	})
	c.lead()
}

// pace is how fast the night goes, learned from those who wait.
type pace struct {
	rate     float64 // games of a person for each minute present
	interval float64 // minutes from one free court to the next
}

// newPace takes those on court to play as often as those who wait.
func newPace(r Moment) pace {
	games, present, longest := 0.0, 0.0, 1.0
	for _, w := range r.Waiting {
		games += float64(w.Games)
		present += w.Present
		longest = max(longest, w.Waited)
	}
	if games == 0 || present == 0 {
		return pace{interval: longest}
	}
	rate := games / present
	return pace{rate, 4 / (rate * float64(len(r.Waiting)+4*len(r.Running)))}
}

// behind is how many games somebody had less than the average for the time present, not more than one,
// so that nobody makes up for an hour at once.
func (p pace) behind(w Waiting) float64 {
	// the conversion keeps machines that multiply and add in one step from rounding otherwise
	return max(-1, min(1, float64(p.rate*w.Present)-float64(w.Games)))
}

// longestInTurn is how long the longest of those who wait will have waited if everybody is called in turn.
func (c *caller) longestInTurn() float64 {
	longest, seats := 0.0, 0
	for _, x := range c.line {
		wait := x.waited
		if seats/4 > 0 {
			wait += c.untilFree(seats/4 - 1)
		}
		longest = max(longest, wait)
		seats += len(x.who)
	}
	return longest
}

// burden is what a wait of so many minutes costs. It grows with the third power, so that to pass
// somebody over costs the more the longer the person has waited and the less the other has, and
// nothing if both came off together. The first in the queue may be passed over in no way.
func (c *caller) burden(minutes float64) float64 {
	// the conversions keep machines that multiply and add in one step from rounding otherwise
	if c.r.ByWait {
		u := minutes / c.pace.interval
		return strictWeight * float64(float64(u*u)*u)
	}
	return mixWeight * float64(float64(minutes*minutes)*minutes)
}

// untilFree is in how many minutes the court frees that so many others go before, as expected; where nobody knows,
// courts free at the pace of the night.
func (c *caller) untilFree(before int) float64 {
	free := c.r.Free
	if c.r.ByWait {
		free = nil // the pace of the night is the same for everybody who waits
	}
	if before < len(free) {
		return max(0, free[before])
	}
	last := 0.0
	if len(free) > 0 {
		last = max(0, free[len(free)-1])
	}
	return last + float64(1+before-len(free))*c.pace.interval
}

// waits is what it costs that these four go first, and the others after them in the order of the queue,
// four whenever a court frees. Without a four everybody goes in turn.
func (c *caller) waits(window []call, four []night.Player) float64 {
	var before [2]int // how many of each group go before
	each, side := 4, 0
	if c.n.Side != nil {
		each = 2
	}
	sum, seats := 0.0, 0
	for _, x := range window {
		size := float64(len(x.who))
		goes := slices.Contains(four, x.who[0])
		if four == nil {
			goes = seats+len(x.who) <= 4
		}
		if goes {
			seats += len(x.who)
			sum += size * (c.burden(x.waited) - float64(behindWeight*x.behind))
			continue
		}
		if c.n.Side != nil {
			side = c.n.Side[x.who[0]]
		}
		later := c.untilFree(before[side] / each)
		sum += size * c.burden(x.waited+later)
		if over := x.waited + later - c.longest; !c.r.ByWait && over > slack {
			sum += size * float64(overWeight*float64(over-slack)*float64(over-slack))
		}
		before[side] += len(x.who)
	}
	return sum
}
