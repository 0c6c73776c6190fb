package bound

import "testing"

// TestAFullColumnTakesNothing: units fall on the lowest column with room left, by hand.
func TestAFullColumnTakesNothing(t *testing.T) {
	for _, c := range []struct {
		heights, limits []int
		units, cost     int
		repeats         int
	}{
		{[]int{0, 1}, []int{0, 5}, 1, 1, 1},         // the low one is full
		{[]int{0, 0}, []int{1, 2}, 3, 1, 1},         // 0, 0, and 1 on the second
		{[]int{2, 0}, []int{3, 1}, 3, 0 + 2 + 3, 2}, // one on the second, then on the first
		{[]int{0}, []int{2}, 5, 0 + 1, 1},           // what no column takes costs nothing
		{[]int{3}, []int{0}, 2, 0, 0},
	} {
		if got := newPours(c.heights, c.limits).pour(c.units); got != c.cost {
			t.Errorf("%d units on %v with room %v cost %d, want %d", c.units, c.heights, c.limits, got, c.cost)
		}
		if got := newPours(c.heights, c.limits).repeats(c.units); got != c.repeats {
			t.Errorf("%d units on %v with room %v repeat %d, want %d", c.units, c.heights, c.limits, got, c.repeats)
		}
	}
}
