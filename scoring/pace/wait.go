package pace

import "slices"

// Wait is the minutes until a group of players gets a court, within which it gets it with about chance q. The
// courts that play have run for the given minutes; ahead is how many groups go on court before this
// one, and change the minutes from the end of a game to the start of the next on the same court.
//
// Each court is taken to be late or early by the same share q, which is exact for a single game and
// careful for several: use 0.5 for the answer, 0.2 and 0.8 for "between".
func (c Clock) Wait(running []float64, ahead int, change, q float64) float64 {
	return c.Waits(running, ahead+1, change, q)[ahead]
}

// Waits is Wait of so many groups that wait, the first of which has none ahead of it.
func (c Clock) Waits(running []float64, groups int, change, q float64) []float64 {
	out := make([]float64, groups)
	if len(running) == 0 {
		return out
	}
	free := make([]float64, len(running))
	for i, elapsed := range running {
		free[i] = c.Remaining(elapsed, q) + change
	}
	game := c.Quantile(q) + change
	for i := range out {
		out[i] = slices.Min(free)
		free[slices.Index(free, out[i])] += game
	}
	return out
}
