package pace

import (
	"fmt"
	"math"
)

// Hall is what a number of rounds has to fit into.
type Hall struct {
	Courts int     // that start together: a round lasts as long as its longest game
	Change float64 // minutes from the end of a round to the start of the next
	Left   float64 // minutes until the hall must be left
}

// Validate says what is wrong with h, and nil when nothing is.
func (h Hall) Validate() error {
	switch {
	case h.Courts < 1:
		return fmt.Errorf("rounds need a court: %d is too few", h.Courts)
	case !(h.Change >= 0):
		return fmt.Errorf("a change of courts cannot take %v minutes: use 0 or more", h.Change)
	case math.IsNaN(h.Left):
		return fmt.Errorf("the minutes until closing are not known")
	}
	return nil
}

// maxRounds ends the search for the rounds that fit when games seem to take no time.
const maxRounds = 200

// Rounds is how many rounds are over by closing time with at least this confidence, 0.5 for an even chance,
// 0.95 to be nearly sure. With one court it is the games that fit on it one after the other, as in
// the rolling flow.
func (c Clock) Rounds(h Hall, confidence float64) int {
	fit := c.fitter(h)
	rounds := 0
	for rounds < maxRounds && fit.chance(rounds+1) >= confidence {
		rounds++
	}
	return rounds
}

// FitChance is the chance that this many rounds are over by closing time.
func (c Clock) FitChance(h Hall, rounds int) float64 { return c.fitter(h).chance(rounds) }

// fitter holds what the chance of every number of rounds is made of. All games of a night share the unknown
// mean and spread, so the chance is taken for each mean and spread that the clock holds possible, and
// then averaged; with them given, games are independent.
type fitter struct {
	hall  Hall
	paces []pace
}

// pace is one possible mean and spread of the night, with its weight.
type pace struct {
	weight   float64
	game     Lognormal
	courts   float64
	mean, sd float64 // of the minutes of a round, the longest of its games
}

const (
	spreadPoints = 15 // over the precision of log minutes
	meanPoints   = 13 // over their mean, given the precision
	reach        = 3.5
)

func (c Clock) fitter(h Hall) fitter {
	f := fitter{hall: h}
	top := newTop(max(h.Courts, 1))
	total := 0.0
	for i := range spreadPoints {
		// The precision is Gamma(alpha, beta); its logarithm is close to normal with variance 1/alpha.
		u := reach * (2*float64(i)/(spreadPoints-1) - 1) / math.Sqrt(c.Alpha)
		precision := c.Alpha / c.Beta * math.Exp(u)
		spreadWeight := math.Exp(c.Alpha*u - c.Alpha*(math.Exp(u)-1))
		sigma := 1 / math.Sqrt(precision)
		for j := range meanPoints {
			z := reach * (2*float64(j)/(meanPoints-1) - 1)
			game := Lognormal{c.M + z*sigma/math.Sqrt(c.Kappa), sigma}
			p := pace{weight: spreadWeight * math.Exp(-z*z/2), game: game, courts: float64(max(h.Courts, 1))}
			p.mean, p.sd = top.moments(game)
			total += p.weight
			f.paces = append(f.paces, p)
		}
	}
	for i := range f.paces {
		f.paces[i].weight /= total
	}
	return f
}

// chance is the chance that rounds are over in time.
func (f fitter) chance(rounds int) float64 {
	if rounds < 1 {
		return 1
	}
	n := float64(rounds)
	left := f.hall.Left - (n-1)*f.hall.Change // nothing is changed after the last round
	sum := 0.0
	for _, p := range f.paces {
		sum += p.weight * p.chance(n, left)
	}
	return sum
}

// chance is the chance that the minutes of n rounds come to at most left. For one round it is exact. A sum
// of several is taken as lognormal with the right mean and variance (L. F. Fenton, IRE Transactions on
// Communications Systems 8, 1960), which keeps its longer tail to the right.
func (p pace) chance(n, left float64) float64 {
	if n == 1 {
		return math.Pow(p.game.chance(left), p.courts)
	}
	mean, variance := n*p.mean, n*p.sd*p.sd
	s2 := math.Log1p(variance / (mean * mean))
	return Lognormal{math.Log(mean) - s2/2, math.Sqrt(s2)}.chance(left)
}

// top is the longest of several games, as weights over standard normal points: its density is
// n φ(z) Φ(z)^(n-1).
type top struct{ z, weight []float64 }

func newTop(n int) top {
	const from, to, step = -6.0, 8.0, 0.25
	var t top
	total := 0.0
	for z := from; z <= to; z += step {
		w := math.Exp(-z*z/2) * math.Pow(normalCDF(z), float64(n-1))
		t.z, t.weight = append(t.z, z), append(t.weight, w)
		total += w
	}
	for i := range t.weight {
		t.weight[i] /= total
	}
	return t
}

// moments are the mean and the standard deviation of the minutes of the longest game.
func (t top) moments(game Lognormal) (mean, sd float64) {
	var second float64
	for i, z := range t.z {
		minutes := math.Exp(game.Mu + game.Sigma*z)
		mean += t.weight[i] * minutes
		second += t.weight[i] * minutes * minutes
	}
	return mean, math.Sqrt(max(0, second-mean*mean))
}
