package session

import (
	"math"
	"slices"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

// changeMinutes is what passes between two games on a court: walking, water, the call. The slot of
// the settings includes it. Common practice, no source.
const changeMinutes = 3

// ChangeTime is the time that passes between two games on a court.
const ChangeTime = changeMinutes * time.Minute

// Clock is what the night has taught about the minutes of a game. It starts from the slot of the
// settings and learns from every game that was played to its end; time that play was held is not
// counted, and a game under other rules than tonight's now counts as long as it would be under these.
func (n *Night) Clock() pace.Clock {
	c, err := pace.NewClock(float64(max(2, n.Settings.Slot-changeMinutes)))
	if err != nil {
		return pace.Clock{}
	}
	for i := range n.Games {
		g := &n.Games[i]
		if g.Final != nil && g.Final.How() == scoring.Played && n.timed(g) {
			c = c.After(Like(n.GameTime(g, g.Finished).Minutes(), g.Rules, n.Settings.Scoring))
		}
	}
	return c
}

// quickestPoint is less than any point takes: to fetch the ball, to say the score, to serve. Common practice, no source.
const quickestPoint = 4 * time.Second

// timed tells whether the time from a call to its score can be what the game took. A score that is entered sooner than its
// points can be played is of a game that began before its call, or of somebody who tries the desk: it teaches nothing.
func (n *Night) timed(g *Game) bool {
	s := g.Final.Score()
	return n.GameTime(g, g.Finished) >= time.Duration(s.A+s.B)*quickestPoint
}

// Chance is the chance that a game called now is over by closing time. A game that the clock stops is over
// when it does. Ok is false when no closing time is set.
func (n *Night) Chance(now time.Time) (chance float64, ok bool) {
	if n.Settings.Closing.IsZero() {
		return 0, false
	}
	left := n.Settings.Closing.Sub(now).Minutes()
	if limit := n.Settings.Scoring.Minutes; limit > 0 && left >= float64(limit) {
		return 1, true
	}
	return n.Clock().Chance(left), true
}

// Fit is how many more rounds can be over by closing time, with an even chance, probably and
// nearly surely (50, 80 and 95 %). Ok is false when no closing time is set.
type Fit struct{ Even, Probable, Sure int }

// Fit says how many more rounds fit after what is on court now.
func (n *Night) Fit(now time.Time) (f Fit, ok bool) {
	if n.Settings.Closing.IsZero() {
		return Fit{}, false
	}
	c := n.Clock()
	left := n.Settings.Closing.Sub(now).Minutes()
	if len(n.Running()) > 0 {
		left -= n.untilOver(c, now, 0.5) + changeMinutes
	}
	if left <= 0 {
		return Fit{}, true
	}
	h := pace.Hall{Courts: max(1, len(n.OpenCourts())), Change: changeMinutes, Left: left}
	return Fit{c.Rounds(h, 0.5), c.Rounds(h, 0.8), c.Rounds(h, 0.95)}, true
}

// untilOver is the minutes until all running games are over, each with chance q.
func (n *Night) untilOver(c pace.Clock, now time.Time, q float64) float64 {
	most := 0.0
	minutes := n.runningMinutes(now)
	slices.Sort(minutes)
	for _, m := range slices.Compact(minutes) { // most games of a round began at the same time, and each takes a while to reckon
		most = max(most, c.Remaining(m, q))
	}
	return most
}

// runningMinutes is how long each running game has been played, without holds.
func (n *Night) runningMinutes(now time.Time) []float64 {
	var out []float64
	for _, g := range n.Running() {
		out = append(out, n.GameTime(g, now).Minutes())
	}
	return out
}

// Wait is when somebody who is at a place on the bench may play next: probably not before Early
// and not after Late, most likely around Likely.
type Wait struct{ Early, Likely, Late time.Duration }

// NextTurn estimates the wait of the person at a place of the bench, 0 for the first. In rounds
// everybody waits for the round to end; in the rolling flow each four that go first wait for one
// court more.
func (n *Night) NextTurn(place int, now time.Time) Wait { return n.NextTurns(place/4+1, now)[place/4] }

// NextTurns is NextTurn of the first person of each four on the bench, of so many fours.
func (n *Night) NextTurns(fours int, now time.Time) []Wait {
	out := make([]Wait, fours)
	early, likely, late := n.turns(fours, now, 0.2), n.turns(fours, now, 0.5), n.turns(fours, now, 0.8)
	for i := range out {
		out[i] = Wait{Early: early[i], Likely: likely[i], Late: late[i]}
	}
	return out
}

// turns is within which time so many fours on the bench play, with chance q.
func (n *Night) turns(fours int, now time.Time, q float64) []time.Duration {
	c, out := n.Clock(), make([]time.Duration, fours)
	if n.Settings.Flow == Rounds {
		over := span(n.untilOver(c, now, q))
		for i := range out {
			out[i] = over
		}
		return out
	}
	for i, minutes := range c.Waits(n.runningMinutes(now), fours, changeMinutes, q) {
		out[i] = span(minutes)
	}
	return out
}

// RoundsBegin is how long it is likely to take until each of so many rounds to come is called. In the
// rolling flow it is the next free court. Known is false of a round while nobody can tell: play is held, or waits for
// the organiser to begin.
func (n *Night) RoundsBegin(rounds int, now time.Time) []Beginning {
	out := make([]Beginning, rounds)
	if n.Hold != nil || rounds == 0 {
		return out
	}
	c := n.Clock()
	courts := max(1, len(n.OpenCourts()))
	round := c.Quantile(math.Pow(0.5, 1/float64(courts))) + changeMinutes // all courts are over, with an even chance
	first := n.turns(1, now, 0.5)[0]
	for i := range out {
		out[i] = Beginning{In: first + span(changeMinutes+float64(i)*round), Known: i > 0 || len(n.Running()) > 0}
	}
	return out
}

// Beginning is when a round to come is likely to be called, if that is known.
type Beginning struct {
	In    time.Duration
	Known bool
}

func span(minutes float64) time.Duration {
	return time.Duration(minutes * float64(time.Minute)).Truncate(time.Minute)
}
