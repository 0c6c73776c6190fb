package standings

import (
	"math"
	"testing"
)

// The 95 % range of a win share holds the true one about so often, worked out exactly from the binomial
// distribution over all true shares alike: L. Brown, T. Cai, A. DasGupta, Interval Estimation for a Binomial
// Proportion, Statistical Science 16 (2001) 101-133, find the same of Wilson's.
func TestRangesOfWinSharesHold(t *testing.T) {
	const steps = 2000
	for _, games := range []int{3, 5, 8, 12, 30, 100} {
		mean := 0.0
		for i := range steps {
			share := (float64(i) + 0.5) / steps
			held := 0.0
			for wins := range games + 1 {
				if low, high := Interval(float64(wins), games); low <= share && share <= high {
					held += binomial(games, wins, share)
				}
			}
			mean += held / steps
		}
		t.Logf("%d games: %.3f of the ranges hold", games, mean)
		if mean < 0.945 || mean > 0.97 {
			t.Errorf("of %d games %.3f of the ranges hold", games, mean)
		}
	}
}

func binomial(n, k int, p float64) float64 {
	a, _ := math.Lgamma(float64(n + 1))
	b, _ := math.Lgamma(float64(k + 1))
	c, _ := math.Lgamma(float64(n - k + 1))
	return math.Exp(a - b - c + float64(k)*math.Log(p) + float64(n-k)*math.Log1p(-p))
}
