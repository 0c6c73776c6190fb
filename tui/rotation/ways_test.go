package rotation

import (
	"testing"

	"club/quadrille/scheduler"
	"club/quadrille/tui/ui"
)

// TestLookingText: the screen tells of a search that goes on, of one that ended, and of one that ended because the bound is met;
// and of none that was not needed.
func TestLookingText(t *testing.T) {
	for want, c := range map[string]struct {
		looking ui.Looking
		v       scheduler.Value
	}{
		"Still looking: 9 repeats → 7. The next round stays as it is.": {ui.Looking{From: 9, Begun: true}, scheduler.Value{Value: 7, Bound: 4}},
		"Settled: 7 repeats.":                  {ui.Looking{From: 7, Begun: true, Settled: true}, scheduler.Value{Value: 7, Bound: 4}},
		"Settled at the bound: 9 repeats → 4.": {ui.Looking{From: 9, Begun: true, Settled: true}, scheduler.Value{Value: 4, Bound: 4}},
		"Settled at the bound: 9 repeats → 6.": {ui.Looking{From: 9, Begun: true, Settled: true}, scheduler.Value{Value: 6, Bound: 4, Played: 2}},
		"":                                     {ui.Looking{From: 4, Begun: true, Settled: true}, scheduler.Value{Value: 4, Bound: 4}},
	} {
		r := ui.Rotation{Looking: c.looking}
		r.Certificate.MeetingEvenness = c.v
		if got := lookingText(r); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
