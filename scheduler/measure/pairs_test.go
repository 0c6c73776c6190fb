package measure

import (
	"testing"
)

// TestConv compares with the definition: all ways to write the total as a sum.
func TestConv(t *testing.T) {
	var least func(total, n int) int
	least = func(total, n int) int {
		if n == 1 {
			return Pairs(total)
		}
		best := 1 << 30
		for x := range total + 1 {
			best = min(best, Pairs(x)+least(total-x, n-1))
		}
		return best
	}
	for total := range 13 {
		for n := 1; n < 5; n++ {
			if got, want := LeastPairs(total, n), least(total, n); got != want {
				t.Errorf("conv(%d, %d) = %d, want %d", total, n, got, want)
			}
		}
	}
}
