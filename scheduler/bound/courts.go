package bound

import (
	"slices"

	"club/quadrille/scheduler/measure"
)

// CourtBound is the least court spread: a person whose games do not divide evenly among the courts in
// use has been one time more on one than on another. What fixed rounds left uneven, each person's other games can
// level at best one by one, always on the court where the person was least.
func (s *Scope) CourtBound(m *measure.Counts) int {
	if len(m.OnCourt) == 0 || len(m.OnCourt[0]) < 2 {
		return 0
	}
	fixed := measure.Count(s.n, nil).OnCourt
	sum := 0
	for i, counts := range m.OnCourt {
		courts, games := make([]int, len(counts)), 0
		copy(courts, fixed[i]) // courts are listed in the order of their first games
		for k := range counts {
			games += counts[k] - courts[k]
		}
		for range games {
			least := slices.Index(courts, slices.Min(courts))
			courts[least]++
		}
		sum += slices.Max(courts) - slices.Min(courts)
	}
	return sum
}
