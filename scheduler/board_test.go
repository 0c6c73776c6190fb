package scheduler

import (
	"testing"

	"pgregory.net/rapid"
)

// TestMovesKeepTheBooks takes random moves and compares the running tallies and weights with a count
// from scratch.
func TestMovesKeepTheBooks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyProblem(t)
		if len(contradictions(&p)) > 0 {
			return
		}
		n := newNight(&p)
		s := &search{n: n, d: newDice(p.Seed, 1), most: n.mostCourts()}
		b := s.draw()
		a := newAnnealer(b, s.d, score{})
		if len(a.m.live) == 0 {
			return
		}
		for range 300 {
			a.try(1 << 12)
		}
		play, rest := b.play, b.rest
		pair := append([]tally(nil), b.pair...)
		b.recount()
		if b.play != play || b.rest != rest {
			t.Fatalf("weights %d and %d, counted %d and %d", play, rest, b.play, b.rest)
		}
		for at := range pair {
			if pair[at] != b.pair[at] {
				t.Fatalf("pair %d: %v, counted %v", at, pair[at], b.pair[at])
			}
		}
	})
}
