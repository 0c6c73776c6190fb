package session

import (
	"math"
	"time"
)

// RoundClock is how long the round on court has been played, without holds, and by when it should be over.
type RoundClock struct {
	Played  time.Duration
	Target  time.Duration // from the call until it should be over: the time limit, or what four of five such rounds take
	Limited bool          // Target is the time limit of its games
	Round   int
}

// Left is what is left until the round should be over, 0 when that time has come.
func (c RoundClock) Left() time.Duration { return max(0, c.Target-c.Played) }

// Over tells whether the round should be over.
func (c RoundClock) Over() bool { return c.Played >= c.Target }

// roundOver is the chance with which a round is over at the target of its clock: all of its games are.
const roundOver = 0.8

// RoundClock is the clock of the round whose games go on. Ok is false when none does.
func (n *Night) RoundClock(now time.Time) (c RoundClock, ok bool) {
	games := 0
	for _, g := range n.Running() {
		if g.Round == 0 || g.Round != len(n.Rounds) {
			continue
		}
		games++
		c.Round, c.Played = g.Round, max(c.Played, n.GameTime(g, now))
		c.Target = max(c.Target, time.Duration(g.Rules.Minutes)*time.Minute)
	}
	if games == 0 {
		return RoundClock{}, false
	}
	if c.Limited = c.Target > 0; !c.Limited {
		c.Target = span(n.Clock().Quantile(math.Pow(roundOver, 1/float64(len(n.Rounds[c.Round-1].Games)))))
	}
	return c, true
}
