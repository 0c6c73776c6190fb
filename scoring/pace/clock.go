package pace

import (
	"fmt"
	"math"
)

// Clock is what is known about the minutes that a game takes: the logarithm of the minutes is normal, and
// its mean and variance have a normal-inverse-gamma distribution, which every finished game updates in
// closed form (A. Gelman and others, Bayesian Data Analysis, 3rd edition, chapter 3.3).
//
// Only games that were played to their end may be given to it. A game that still runs, or that the clock
// or the weather stopped, is no short game.
type Clock struct {
	M     float64 `json:"m"`     // where the log minutes lie
	Kappa float64 `json:"kappa"` // how many games that knowledge is worth
	Alpha float64 `json:"alpha"` // half of the games that the knowledge of their spread is worth
	Beta  float64 `json:"beta"`  // and half of the sum of squares of these
}

// The prior of a club about which nothing is known: a game varies by about 30 % around its median, and the
// guess counts as much as four games.
const (
	priorKappa = 4
	priorAlpha = 3
	priorBeta  = 0.27
)

// NewClock starts from a guess of the median minutes of a game.
func NewClock(minutes float64) (Clock, error) {
	if !usable(minutes) {
		return Clock{}, fmt.Errorf("a game cannot take %v minutes: guess more than 0, 15 is usual to 11", minutes)
	}
	return Clock{M: math.Log(minutes), Kappa: priorKappa, Alpha: priorAlpha, Beta: priorBeta}, nil
}

// usable reports whether minutes can be the length of a game.
func usable(minutes float64) bool { return minutes > 0 && !math.IsInf(minutes, 1) }

// After is the clock after one more game that was played to its end. Minutes that cannot be are ignored, as
// they come from a wrong wall clock.
func (c Clock) After(minutes float64) Clock {
	if !usable(minutes) {
		return c
	}
	off := math.Log(minutes) - c.M
	return Clock{
		M:     (c.Kappa*c.M + math.Log(minutes)) / (c.Kappa + 1),
		Kappa: c.Kappa + 1,
		Alpha: c.Alpha + 0.5,
		Beta:  c.Beta + c.Kappa*off*off/(2*(c.Kappa+1)),
	}
}

// For is the clock for games of another length. What was learned from games like from is carried over to
// games like to in the proportion of their mean numbers of rallies.
func (c Clock) For(from, to Game) Clock {
	if from.Mean > 0 && to.Mean > 0 {
		c.M += math.Log(to.Mean / from.Mean)
	}
	return c
}

// predictive is the Student distribution of the log minutes of the next game.
func (c Clock) predictive() (df, scale float64) {
	return 2 * c.Alpha, math.Sqrt(c.Beta * (c.Kappa + 1) / (c.Alpha * c.Kappa))
}

// Median is the minutes within which half of the games are over.
func (c Clock) Median() float64 { return math.Exp(c.M) }

// Quantile is the minutes within which the next game is over with chance q, 0 < q < 1.
func (c Clock) Quantile(q float64) float64 {
	df, scale := c.predictive()
	return math.Exp(c.M + scale*studentQuantile(q, df))
}

// Chance is the chance that the next game is over within minutes.
func (c Clock) Chance(minutes float64) float64 {
	if minutes <= 0 {
		return 0
	}
	df, scale := c.predictive()
	return studentCDF((math.Log(minutes)-c.M)/scale, df)
}

// Remaining is the minutes within which a game that has run for elapsed minutes is over with chance q. That
// it is still running is taken into account: an overdue game is not about to end.
func (c Clock) Remaining(elapsed, q float64) float64 {
	over := c.Chance(elapsed)
	if q = over + q*(1-over); q >= 1 {
		return 0 // so far beyond every other game that there is nothing to say
	}
	return max(0, c.Quantile(q)-elapsed)
}

// Lognormal is the clock with its mean and spread taken as known. The mean minutes need it: under the full
// predictive distribution, whose tails are heavier, they are infinite.
func (c Clock) Lognormal() Lognormal {
	return Lognormal{Mu: c.M, Sigma: math.Sqrt(c.Beta / c.Alpha)}
}
