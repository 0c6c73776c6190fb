package scoring_test

import (
	"testing"

	"club/quadrille/scoring"
)

func TestFaultsAreCountedForWhoeverLostTheRally(t *testing.T) {
	tally := scoring.TallyFaults([]scoring.Rally{
		{Won: scoring.A},
		{Won: scoring.A, Fault: scoring.Net},
		{Won: scoring.A, Fault: scoring.Kitchen, By: 2},
		{Won: scoring.A, Fault: scoring.Kitchen, By: 1},
		{Won: scoring.B, Fault: scoring.Out, By: 1},
		{Won: scoring.B, Fault: scoring.Fault(99)},
	})
	for _, c := range []struct {
		name      string
		got, want int
	}{
		{"side B", tally.Of(scoring.B), 3},
		{"side A", tally.Of(scoring.A), 1},
		{"B in the kitchen", tally.Side[scoring.B][scoring.Kitchen], 2},
		{"B1", tally.By(scoring.Seat{Team: scoring.B}), 1},
		{"B2", tally.By(scoring.Seat{Team: scoring.B, Index: 1}), 1},
		{"A1 out", tally.Seat[scoring.A][0][scoring.Out], 1},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d faults, want %d", c.name, c.got, c.want)
		}
	}
}

// Rules 4.B.9 (since 2023) and 2026: 6.F.
func TestRulingsOnMistakes(t *testing.T) {
	for _, c := range []struct {
		mistake scoring.Mistake
		noticed scoring.Noticed
		right   bool
		replay  bool
		fault   bool
	}{
		{scoring.WrongServer, scoring.BeforeServe, true, false, false},
		{scoring.WrongServer, scoring.InRally, true, true, false},
		{scoring.WrongBox, scoring.InRally, false, false, true},
		{scoring.WrongReceiver, scoring.AfterRally, true, false, false},
		{scoring.WrongScore, scoring.BeforeReturn, true, true, false},
		{scoring.WrongScore, scoring.BeforeReturn, false, false, true},
		{scoring.WrongScore, scoring.InRally, true, false, true},
		{scoring.WrongScore, scoring.AfterRally, true, false, false},
	} {
		got := scoring.Settle(c.mistake, c.noticed, c.right)
		if got.Replay != c.replay || got.Fault != c.fault || got.Why == "" {
			t.Errorf("mistake %d noticed %d, right %v: %+v", c.mistake, c.noticed, c.right, got)
		}
	}
}
