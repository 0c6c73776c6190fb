package measure

// Value is one measure with its provable lower bound.
type Value struct {
	Value int  `json:"value"`
	Bound int  `json:"bound"`
	Open  bool `json:"no_bound,omitempty"` // no bound is known; Bound is 0 then

	// Played is how much of the gap the rounds already played make certain, whatever follows them: no rotation that
	// begins with these can be below Bound + Played.
	Played int `json:"played,omitempty"`
}

// Gap is how far the value may be from the best possible, 0 where no bound is known.
func (v Value) Gap() int {
	if v.Open {
		return 0
	}
	return v.Value - v.Bound
}

// Left is how much of the gap rounds that are still to come could close at most.
func (v Value) Left() int { return v.Gap() - v.Played }

// After notes what the rounds already played make certain, from the same measure with a bound of rotations that
// begin with them.
func (v *Value) After(given Value) {
	if !v.Open && !given.Open {
		v.Played = max(0, min(v.Value, given.Bound)-v.Bound)
	}
}
