package pace

import "math"

// Lognormal is a distribution of minutes whose logarithm is normal.
type Lognormal struct{ Mu, Sigma float64 }

// Mean is the mean minutes.
func (l Lognormal) Mean() float64 { return math.Exp(l.Mu + l.Sigma*l.Sigma/2) }

// MeanBeyond is the mean of the total minutes of those games that last longer than elapsed:
// exp(mu + s²/2) Φ(s-z) / Φ(-z), z = (ln elapsed - mu)/s.
func (l Lognormal) MeanBeyond(elapsed float64) float64 {
	if elapsed <= 0 {
		return l.Mean()
	}
	z := (math.Log(elapsed) - l.Mu) / l.Sigma
	return l.Mean() * normalCDF(l.Sigma-z) / normalCDF(-z)
}

// MedianBeyond is their median.
func (l Lognormal) MedianBeyond(elapsed float64) float64 {
	if elapsed <= 0 {
		return math.Exp(l.Mu)
	}
	// The upper tail is halved and not the lower one doubled, which would lose all digits for a late game.
	tail := normalCDF((l.Mu - math.Log(elapsed)) / l.Sigma)
	return math.Exp(l.Mu - l.Sigma*normalQuantile(tail/2))
}

// chance is the chance of at most these minutes.
func (l Lognormal) chance(minutes float64) float64 {
	if minutes <= 0 {
		return 0
	}
	return normalCDF((math.Log(minutes) - l.Mu) / l.Sigma)
}
