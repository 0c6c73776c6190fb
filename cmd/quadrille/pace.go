package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

// newPace builds the command that says how long a game lasts.
func newPace() *cobra.Command {
	serveWins := pace.DefaultServeWins
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "pace",
		Short: "Say how many rallies and which scores to expect of a game",
		Long: `Works out from the rules alone how many rallies a game between equals takes and with which
scores it ends. Team A serves first.`,
		Example: `  quadrille pace
  quadrille pace --scoring rally --to 15 --win-by 1
  quadrille pace --singles --serve-wins 0.5 --json`,
		Args: nothing,
	}
	rules := rulesFlags(cmd)
	singlesFlag(cmd, rules)
	addShare(cmd, &serveWins, "serve-wins", 0.01, 0.99, "`chance` that the serving team wins a rally")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the figures as JSON")
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		game, err := pace.Distribution(*rules, serveWins, serveWins)
		if err != nil {
			return usage{err}
		}
		if asJSON {
			return printJSON(cmd.OutOrStdout(), expectationOf(game))
		}
		return printPace(cmd.OutOrStdout(), *rules, game)
	}
	return cmd
}

// expectation is a game as `pace --json` prints it. Its form is fixed.
type expectation struct {
	Rallies struct {
		Mean float64 `json:"mean"`
		SD   float64 `json:"sd"`
		P10  int     `json:"p10"`
		P50  int     `json:"p50"`
		P90  int     `json:"p90"`
	} `json:"rallies"`
	FirstTeamWins float64       `json:"first_team_wins"`
	Scores        []scoreChance `json:"scores"` // most likely first
}

// scoreChance is one final score and its chance.
type scoreChance struct {
	A int     `json:"a"`
	B int     `json:"b"`
	P float64 `json:"p"`
}

func expectationOf(g pace.Game) expectation {
	e := expectation{FirstTeamWins: g.WinsA, Scores: make([]scoreChance, len(g.Outcomes))}
	e.Rallies.Mean, e.Rallies.SD = g.Mean, g.SD
	e.Rallies.P10, e.Rallies.P50, e.Rallies.P90 = g.Quantile(0.1), g.Quantile(0.5), g.Quantile(0.9)
	for i, o := range g.Outcomes {
		e.Scores[i] = scoreChance{o.Score.A, o.Score.B, o.P}
	}
	return e
}

// printPace writes what to expect for people: the figures and the ten most likely scores.
func printPace(w io.Writer, r scoring.Rules, g pace.Game) error {
	const shown = 10
	var out strings.Builder
	fmt.Fprintf(&out, "A game %s, between equals\n\n", r)
	fmt.Fprintf(&out, "rallies, mean            %6.1f\n", g.Mean)
	fmt.Fprintf(&out, "  standard deviation     %6.1f\n", g.SD)
	fmt.Fprintf(&out, "  80 %% range             %d to %d\n", g.Quantile(0.1), g.Quantile(0.9))
	fmt.Fprintf(&out, "points of both           %6.1f\n", g.Points)
	fmt.Fprintf(&out, "first to serve wins      %6.1f %%\n\nscore      chance\n", 100*g.WinsA)
	for _, o := range g.Outcomes[:min(shown, len(g.Outcomes))] {
		fmt.Fprintf(&out, "%-9s %5.1f %%\n", o.Score, 100*o.P)
	}
	if more := len(g.Outcomes) - shown; more > 0 {
		fmt.Fprintf(&out, "and %d more; all stand in --json\n", more)
	}
	_, err := io.WriteString(w, out.String())
	return err
}
