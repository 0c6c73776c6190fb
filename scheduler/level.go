package scheduler

import "math"

// WinChance returns the chance that a team whose two levels sum to a beats one whose levels sum to
// b. Odds of ten to one stand for two whole levels of difference between the sums:
// 1/(1+10^((b-a)/2)). This is the club's convention for drawing balanced games, in the logistic form
// of Bradley and Terry (Biometrika 39 (1952) 324-345); ratings that people see come from elsewhere.
func WinChance(a, b float64) float64 {
	return 1 / (1 + math.Pow(10, (b-a)/2))
}
