package lineup

import "testing"

// TestTheEmptiestCourtIsTheLastOfEquals: courts are given up from the last on, so that the first ones are full.
func TestTheEmptiestCourtIsTheLastOfEquals(t *testing.T) {
	for _, c := range []struct {
		free [][2]int
		want int
	}{
		{[][2]int{{0, 1}, {1, 1}, {0, 1}}, 1},
		{[][2]int{{1, 1}, {0, 2}, {2, 0}, {0, 0}}, 2},
		{[][2]int{{0, 0}, {0, 0}}, 1},
	} {
		f := filling{}
		f.free = make([][2]int, 0)
		f.free = append(f.free, c.free...)
		if got := f.emptiest(); got != c.want {
			t.Errorf("of %v court %d is the emptiest, want %d", c.free, got, c.want)
		}
	}
}
