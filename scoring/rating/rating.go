package rating

import "math"

// Rating is what is known of a person's skill: a normal distribution.
type Rating struct {
	Mu    float64 `json:"mu"`    // its mean
	Sigma float64 `json:"sigma"` // its standard deviation, above 0
}

// z95 is how many standard deviations around the mean hold 95 % of a normal distribution.
const z95 = 1.959964

// Interval is the 95 % range of the skill: the part of the normal distribution between 2.5 and 97.5 %. That it
// holds the skill about so often is shown for the ratings of the model [Club]; those of [Default] claim more
// than they know.
func (r Rating) Interval() (low, high float64) {
	return r.Mu - z95*r.Sigma, r.Mu + z95*r.Sigma
}

// Better is the chance that one person is the more skilled, if both may be compared: see [Design].
func (r Rating) Better(other Rating) float64 {
	spread := math.Sqrt(2 * (r.Sigma*r.Sigma + other.Sigma*other.Sigma))
	return math.Erfc((other.Mu-r.Mu)/spread) / 2
}
