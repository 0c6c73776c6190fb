package rating

import "testing"

// TestNoiseIsSplitMix64 compares with the first outputs of that generator from the state 0, as its reference
// implementation by S. Vigna prints them (from memory).
func TestNoiseIsSplitMix64(t *testing.T) {
	for i, want := range []uint64{0xe220a8397b1dcdaf, 0x6e789e6aa1b965f4, 0x06c45d188009454f} {
		if got := noise(0, uint64(i)); got != float64(want>>11)/(1<<53) {
			t.Errorf("output %d is %v, want %v", i, got, float64(want>>11)/(1<<53))
		}
	}
}
