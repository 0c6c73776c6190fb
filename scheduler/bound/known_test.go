package bound

import (
	"testing"
)

// TestPackingNumbers compares with the published sizes of the best codes A(n,6,4).
func TestPackingNumbers(t *testing.T) {
	for k, want := range []int{
		1, 1, 1, 2, 2, 3, 5, 6, 9, 13, 14, 15, 20, 20, 22, 25, 30, 31, 37, 40, 42, 50, 52, 54, 63,
	} {
		if got := packing(k + 4); got != want {
			t.Errorf("%d people: %d games, want %d", k+4, got, want)
		}
	}
}
