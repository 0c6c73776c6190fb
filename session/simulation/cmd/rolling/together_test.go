package main

import (
	"math"
	"testing"
)

// TestPairsTogetherByHand: with 1, 2, 3 and 4 calls between all are apart; with eight calls in all one lets pass as many
// as another, unless one lets pass none.
func TestPairsTogetherByHand(t *testing.T) {
	for _, c := range []struct{ least, passed, want int }{
		{1, 3, -1},
		{1, 4, 6}, // 1 1 1 1
		{1, 5, 3}, // 1 1 1 2
		{1, 6, 2}, // 1 1 2 2
		{1, 7, 1}, // 1 1 2 3
		{1, 8, 1}, // 1 2 2 3
		{1, 9, 1}, // 1 2 2 4
		{1, 10, 0},
		{1, 23, 0},
		{0, 0, 6},
		{0, 2, 2}, // 0 0 1 1
		{0, 5, 1}, // 0 1 1 3
		{0, 6, 0},
		{0, 8, 0}, // 0 1 3 4
	} {
		if got := pairsTogether(c.least)[c.passed]; got != c.want {
			t.Errorf("each at least %d, %d in all: %d pairs, want %d", c.least, c.passed, got, c.want)
		}
	}
}

// TestMeanTogetherByHand: chords from 7 calls with a pair to 10 with none, and from 1 with three pairs to 3 with one.
func TestMeanTogetherByHand(t *testing.T) {
	for _, c := range []struct {
		passed float64
		least  int
		want   float64
		ok     bool
	}{{8, 1, 2.0 / 3, true}, {9, 1, 1.0 / 3, true}, {10, 1, 0, true}, {12.5, 1, 0, true}, {4, 1, 6, true}, {2, 1, 0, false}, {2, 0, 2, true}, {8, 0, 0, true}, {99, 1, 0, true}} {
		if got, ok := meanTogether(c.passed, c.least); math.Abs(got-c.want) > 1e-9 || ok != c.ok {
			t.Errorf("%g passed, each at least %d: %g, %t, want %g", c.passed, c.least, got, ok, c.want)
		}
	}
}
