package rating

import "math"

// Rating is what is known of a person's skill: a normal distribution.
type Rating struct {
	Mu    float64 `json:"mu"`    // its mean
	Sigma float64 `json:"sigma"` // its standard deviation, above 0
}

// z95 is how many standard deviations around the mean hold 95 % of a normal distribution.
const z95 = 1.959964

// Interval holds the skill with a chance of 95 %.
func (r Rating) Interval() (low, high float64) {
	return r.Mu - z95*r.Sigma, r.Mu + z95*r.Sigma
}

// Better is the chance that one person is the more skilled, if both may be compared: see [Design].
func (r Rating) Better(other Rating) float64 {
	spread := math.Sqrt(2 * (r.Sigma*r.Sigma + other.Sigma*other.Sigma))
	return math.Erfc((other.Mu-r.Mu)/spread) / 2
}
