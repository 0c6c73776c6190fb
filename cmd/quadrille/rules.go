package main

import (
	"github.com/spf13/cobra"

	"club/quadrille/scoring"
)

// rulesFlags adds the flags that say how a game is scored and gives the rules that they set.
func rulesFlags(cmd *cobra.Command) *scoring.Rules {
	r := &scoring.Rules{}
	flags := cmd.Flags()
	addChoice(cmd, &r.Scoring, "scoring", "who may score", scoring.ParseScoring, "side-out", "rally")
	flags.IntVar(&r.To, "to", 11, "`points` that win a game")
	flags.IntVar(&r.WinBy, "win-by", 2, "`lead` that it takes")
	flags.IntVar(&r.Cap, "cap", 0, "`points` that win with any lead (default: no cap)")
	flags.BoolVar(&r.WinOnServe, "win-on-serve", false, "rally scoring: the last point must be won on serve")
	return r
}

// singlesFlag adds the flag for games of one against one.
func singlesFlag(cmd *cobra.Command, r *scoring.Rules) {
	cmd.Flags().BoolVar(&r.Singles, "singles", false, "one against one")
}
