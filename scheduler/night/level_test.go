package night

import "testing"

// TestWidestGap: teams may differ by so many tenths that the stronger one wins with the limit's chance at most.
func TestWidestGap(t *testing.T) {
	for limit, want := range map[float64]int{0.5: 0, 0.51: 0, 0.6: 3, 0.75: 9, 0.9: 19} { // 2·log10(p/(1-p)) levels
		if got := widestGap(limit); got != want {
			t.Errorf("limit %g: %d tenths, want %d", limit, got, want)
		}
	}
	if got := widestGap(1); got != 1000 {
		t.Errorf("no limit: %d", got)
	}
}
