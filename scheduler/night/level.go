package night

import (
	"math"
)

// tenths is how finely levels are told apart when teams are balanced.
const tenths = 10

// Levels returns each person's level in tenths, people without one at the average of the others. It
// is nil when nobody states a level.
func (n *Night) Levels() []int {
	sum, stated := 0.0, 0
	for _, person := range n.Problem.People {
		if person.Level != 0 {
			sum += person.Level
			stated++
		}
	}
	if stated == 0 {
		return nil
	}
	levels := make([]int, n.People)
	for i, person := range n.Problem.People {
		level := person.Level
		if level == 0 {
			level = sum / float64(stated)
		}
		levels[i] = int(math.Round(level * tenths))
	}
	return levels
}

// widestGap is the greatest difference of team levels, in tenths, whose stronger team wins with a
// chance of at most the limit.
func widestGap(limit float64) int {
	gap := 0
	for gap < 1000 && WinChance(float64(gap+1)/tenths, 0) <= limit {
		gap++
	}
	return gap
}

// WinChance returns the chance that a team whose two levels sum to a beats one whose levels sum to
// b. Odds of ten to one stand for two whole levels of difference between the sums:
// 1/(1+10^((b-a)/2)). This is the club's convention for drawing balanced games, in the logistic form
// of Bradley and Terry (Biometrika 39 (1952) 324-345); ratings that people see come from elsewhere.
func WinChance(a, b float64) float64 {
	return 1 / (1 + math.Pow(10, (b-a)/2))
}
