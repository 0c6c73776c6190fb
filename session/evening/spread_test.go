package evening

import "testing"

// TestTheRangeOfASpread is from the least that anybody has to the most.
func TestTheRangeOfASpread(t *testing.T) {
	for _, c := range []struct {
		has         []int
		least, most int
	}{{nil, 0, 0}, {[]int{2}, 2, 2}, {[]int{3, 1, 1}, 1, 3}, {[]int{0, 2}, 0, 2}} {
		var s Spread
		for _, k := range c.has {
			s.add(k)
		}
		if least, most := s.Range(); least != c.least || most != c.most {
			t.Errorf("of %v it is %d to %d, want %d to %d", c.has, least, most, c.least, c.most)
		}
	}
}
