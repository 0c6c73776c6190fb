package rating

import (
	"math"
	"reflect"
	"testing"
)

// TestNoiseIsSplitMix64 compares with the first outputs of that generator from the state 0, as its reference
// implementation by S. Vigna prints them (from memory).
func TestNoiseIsSplitMix64(t *testing.T) {
	for i, want := range []uint64{0xe220a8397b1dcdaf, 0x6e789e6aa1b965f4, 0x06c45d188009454f} {
		if got := noise(0, uint64(i)); got != float64(want>>11)/(1<<53) {
			t.Errorf("output %d is %v, want %v", i, got, float64(want>>11)/(1<<53))
		}
	}
}

// TestPartsAreThoseWhomGamesLink: two halls whose people never meet are two parts, and somebody without a game is one.
func TestPartsAreThoseWhomGamesLink(t *testing.T) {
	l := links{n: 9}
	l.add([]int{0, 1}, []int{2, 3})
	l.add([]int{7, 4}, []int{6, 5})
	l.add([]int{3, 1}, []int{0, 2})
	l.add([]int{4, 5}, []int{7, 6})
	var got [][]int
	for _, p := range l.parts() {
		got = append(got, p.people)
	}
	if want := [][]int{{0, 1, 2, 3}, {4, 5, 6, 7}, {8}}; !reflect.DeepEqual(got, want) {
		t.Errorf("the parts are %v, want %v", got, want)
	}
}

// TestTheMainGroupIsTheLargestAlone: of two that are as large neither is, and nobody alone is a group.
func TestTheMainGroupIsTheLargestAlone(t *testing.T) {
	for _, c := range []struct {
		groups []int
		want   int
	}{{[]int{0, 0, 1}, 0}, {[]int{0, 1, 1, 1, 0}, 1}, {[]int{0, 0, 1, 1}, -1}, {[]int{0, 1, 2}, -1}, {nil, -1}} {
		if got := mainGroup(c.groups); got != c.want {
			t.Errorf("of %v it is %d, want %d", c.groups, got, c.want)
		}
	}
}

// TestAStatedLevelComesBack from the rating that it gives, and a better one is a higher level.
func TestAStatedLevelComesBack(t *testing.T) {
	m := Club()
	for _, level := range []float64{1, 2.5, 3, 4.5, 6} {
		if got := m.Stated(m.Level(level)); math.Abs(got-level) > 1e-9 {
			t.Errorf("level %g comes back as %g", level, got)
		}
	}
}
