package search

import (
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestMovesKeepTheBooks takes random moves and compares the running tallies and weights with a count
// from scratch.
func TestMovesKeepTheBooks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := nighttest.AnyProblem(t)
		if len(night.Contradictions(&p)) > 0 {
			return
		}
		n := night.New(&p)
		w := rapid.SampledFrom([]*measure.Weights{&measure.Usual, &measure.Strict}).Draw(t, "weights")
		s := &search{n: n, d: dice.New(p.Seed, 1), most: mostCourts(n), w: w}
		b := s.draw()
		a := newAnnealer(b, s.d, 0, 0)
		if len(a.m.live) == 0 {
			return
		}
		for range 300 {
			a.try(1 << 12)
		}
		play, rest := b.play, b.rest
		pair := append([]night.Tally(nil), b.pair...)
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
