package phones

import "testing"

// BenchmarkPage is one page of a night of 60 people, for one of them.
func BenchmarkPage(b *testing.B) {
	s := newState(big(15), "")
	for b.Loop() {
		s.page(keyOf(7), false)
	}
}
