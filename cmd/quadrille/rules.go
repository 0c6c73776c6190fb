package main

import (
	"github.com/spf13/cobra"

	"club/quadrille/scoring"
)

// rulesFlags adds the flags that say how a game is scored and gives the rules that they set.
func rulesFlags(cmd *cobra.Command) *scoring.Rules {
	r := &scoring.Rules{}
	addChoice(cmd, &r.Scoring, "scoring", "who may score", scoring.ParseScoring, "side-out", "rally")
	r.To, r.WinBy = 11, 2
	addWhole(cmd, &r.To, "to", 1, scoring.MaxTo, "`points` that win a game")
	addWhole(cmd, &r.WinBy, "win-by", 1, 2, "`lead` that it takes")
	addWhole(cmd, &r.Cap, "cap", 1, scoring.MaxTo, "`points` that win with any lead (default: no cap)")
	start := 0
	addWhole(cmd, &start, "start-score", 0, scoring.MaxTo-1, "`points` that both teams begin with")
	cmd.Flags().BoolVar(&r.WinOnServe, "win-on-serve", false, "rally scoring: the last point must be won on serve")
	before(cmd, func(*cobra.Command) error {
		r.StartA, r.StartB = start, start
		switch {
		case start >= r.To:
			return usagef("--start-score takes a whole number from 0 to %d in a game to %d, not %d", r.To-1, r.To, start)
		case r.Cap != 0 && r.Cap < r.To:
			return usagef("--cap takes a whole number from %d to %d in a game to %d, not %d", r.To, scoring.MaxTo, r.To, r.Cap)
		case r.WinOnServe && r.Scoring == scoring.SideOut:
			return usagef("--win-on-serve goes with --scoring rally: side-out scoring gives every point on serve")
		}
		return nil
	})
	return r
}

// singlesFlag adds the flag for games of one against one.
func singlesFlag(cmd *cobra.Command, r *scoring.Rules) {
	cmd.Flags().BoolVar(&r.Singles, "singles", false, "one against one")
}
