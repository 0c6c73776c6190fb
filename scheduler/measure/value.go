package measure

// Value is one measure with its provable lower bound.
type Value struct {
	Value int  `json:"value"`
	Bound int  `json:"bound"`
	Open  bool `json:"no_bound,omitempty"` // no bound is known; Bound is 0 then
}

// Gap is how far the value may be from the best possible, 0 where no bound is known.
func (v Value) Gap() int {
	if v.Open {
		return 0
	}
	return v.Value - v.Bound
}
