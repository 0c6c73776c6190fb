package judge

import (
	"slices"
	"strings"
	"testing"
)

// TestWordsTellWhatWasPlayedCosts: a gap that only the rounds already played cause is not said to be open, and of one
// that they cause in part the part is told.
func TestWordsTellWhatWasPlayedCosts(t *testing.T) {
	var c Certificate
	c.MeetingEvenness = Value{Value: 9, Bound: 4, Played: 5}
	c.Strangers = Value{Value: 7, Bound: 1, Played: 2}
	c.OpponentEvenness = Value{Value: 3, Bound: 1}
	words := c.Words(true)
	for _, want := range []string{
		"No better any more: meeting evenness, 5 above its bound. The rounds already played make that certain, whatever follows them.",
		"Not proved best: strangers by at most 4 besides 2 that lie in rounds already played and opponent evenness by at most 2; the bound may be too low.",
	} {
		if !slices.Contains(words, want) {
			t.Errorf("%q misses %q", words, want)
		}
	}
	c = Certificate{BenchedTwice: Value{Value: 2, Played: 2}}
	for _, w := range c.Words(true) {
		if strings.Contains(w, "are weighed against") {
			t.Errorf("sit-outs that were played are told as if they were weighed: %q", w)
		}
	}
}

// TestAfterKeepsToTheGap: a bound above the value, or none at all, adds nothing that is not in the gap.
func TestAfterKeepsToTheGap(t *testing.T) {
	for _, tt := range []struct {
		v, given Value
		played   int
	}{
		{Value{Value: 9, Bound: 4}, Value{Value: 9, Bound: 6}, 2},
		{Value{Value: 9, Bound: 4}, Value{Value: 9, Bound: 3}, 0},
		{Value{Value: 9, Bound: 4}, Value{Value: 9, Bound: 12}, 5},
		{Value{Value: 9, Bound: 4}, Value{Value: 9, Open: true}, 0},
		{Value{Value: 9, Open: true}, Value{Value: 9, Bound: 3}, 0},
	} {
		if tt.v.After(tt.given); tt.v.Played != tt.played {
			t.Errorf("%+v: %d, want %d", tt, tt.v.Played, tt.played)
		}
	}
}
