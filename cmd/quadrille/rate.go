package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/sheet"
	"club/quadrille/scoring"
	"club/quadrille/scoring/rating"
	"club/quadrille/session"
)

// newRate builds the command that rates people by their games.
func newRate(opts *options) *cobra.Command {
	var asJSON, desk bool
	var target int
	model := rating.Default()
	cmd := &cobra.Command{
		Use:   "rate [FILE.csv]",
		Short: "Rate people by the club's games or by any spreadsheet of games",
		Long: `Rates everybody by all games of the club, or by those of a CSV file with the header
a1,a2,b1,b2,score_a,score_b, in their order: Bradley-Terry with full pairs after Weng and Lin,
with the numbers that other programs start from, so that ratings can be compared. A rating is a
mean with its deviation; whoever the games do not connect with the main group is not yet
comparable. The club's people start from their stated levels, those of a spreadsheet alike.
FILE.csv is - for the standard input.

With --desk the ratings are those that the desk shows: points count for half, and the numbers
are such that in simulated clubs the 95 % ranges hold. The plain deviations claim more than they
know: after 400 games two of them hold the true skill only 66 to 96 times of 100.`,
		Example: `  quadrille rate
  quadrille rate season.csv --json
  quadrille rate --desk
  quadrille rate season.csv --half-margin --growth 0.762`,
		Args: takes(0, 1, "at most one FILE.csv"),
	}
	flags := cmd.Flags()
	flags.BoolVar(&model.HalfMargin, "half-margin", false, "let the points of a game count for half of its result")
	flags.BoolVar(&desk, "desk", false, "rate as the desk does, with 95 % ranges")
	target = 11
	addWhole(cmd, &target, "to", 1, scoring.MaxTo, "`points` that win a game in FILE.csv, for --half-margin and --desk")
	addShare(cmd, &model.Growth, "growth", 0, 10, "how much less sure a rating grows in a `week` away (0.762: new after two years); needs dates in the column night")
	flags.BoolVar(&asJSON, "json", false, "print the ratings as JSON")
	dataFlag(cmd, opts, clubFile)
	cmd.ValidArgsFunction = first(filesOf("csv"))
	excludes(cmd, "desk", "half-margin")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := oneFile(cmd, args); err != nil {
			return err
		}
		if cmd.Flags().Changed("to") && (len(args) == 0 || !desk && !model.HalfMargin) {
			return usagef("--to is for the games of a FILE.csv, with --half-margin or --desk")
		}
		if desk {
			growth := model.Growth
			model = rating.Club()
			model.Growth = growth
		}
		if err := model.Validate(); err != nil {
			return usage{err}
		}
		var table rating.Table[string]
		var err error
		if len(args) == 0 {
			table, err = rateClub(opts, model)
		} else {
			table, err = rateSheet(cmd, args[0], model, target)
		}
		if err != nil {
			return err
		}
		if asJSON {
			return printJSON(cmd.OutOrStdout(), ratedOf(table, desk))
		}
		return printRatings(cmd.OutOrStdout(), table, desk)
	}
	return cmd
}

// rateClub rates the club's people by all their games.
func rateClub(opts *options, model rating.Model) (rating.Table[string], error) {
	_, ledger, err := opts.look()
	if err != nil {
		return nil, err
	}
	people, err := session.Ratings(ledger.Club(), model)
	table := make(rating.Table[string], len(people))
	for i, p := range people {
		table[i] = rating.Person[string]{
			Who: ledger.Club().Name(p.Who), Rating: p.Rating, Games: p.Games, Comparable: p.Comparable, Group: p.Group,
		}
	}
	return table, err
}

// rateSheet rates everybody by the games of a spreadsheet.
func rateSheet(cmd *cobra.Command, path string, model rating.Model, target int) (rating.Table[string], error) {
	played, err := readGames(cmd, path, "")
	if err != nil {
		return nil, err
	}
	played, left := sheet.Without(played, scoring.Walkover, scoring.Void) // a retirement is a result
	if left != "" {
		note(cmd, "%s", left)
	}
	if model.Growth > 0 {
		slices.SortStableFunc(played, func(a, b sheet.Game) int { return strings.Compare(a.Night, b.Night) })
	}
	games := make([]rating.Game[string], len(played))
	for i, g := range played {
		games[i] = rating.Game[string]{A: g.A, B: g.B, Share: model.Settled(0.5-0.5*float64(g.Winner), g.ScoreA, g.ScoreB, target)}
		if model.Growth > 0 {
			if games[i].Week, err = week(g); err != nil {
				return nil, err
			}
		}
	}
	return rating.Replay(model, nil, games)
}

// week is when a game was played, in weeks.
func week(g sheet.Game) (float64, error) {
	day, err := time.Parse(time.DateOnly, g.Night)
	if err != nil {
		return 0, fmt.Errorf("games line %d: --growth needs the date of each game in the column night, as 2026-01-08, not %q", g.Line, g.Night)
	}
	return day.Sub(time.Unix(0, 0)).Hours() / (7 * 24), nil
}

// rated is one person as `rate --json` prints it. Its form is fixed.
type rated struct {
	Name       string  `json:"name"`
	Mu         float64 `json:"mu"`
	Sigma      float64 `json:"sigma"`
	Games      int     `json:"games"`
	Comparable bool    `json:"comparable"`

	Low  *float64 `json:"low,omitempty"` // the 95 % range, with --desk
	High *float64 `json:"high,omitempty"`
}

func ratedOf(table rating.Table[string], ranges bool) []rated {
	out := make([]rated, len(table))
	for i, p := range table {
		out[i] = rated{Name: p.Who, Mu: p.Mu, Sigma: p.Sigma, Games: p.Games, Comparable: p.Comparable}
		if ranges {
			low, high := p.Interval()
			out[i].Low, out[i].High = &low, &high
		}
	}
	return out
}

// printRatings writes the ratings for people, best first, each with its 95 % range where ranges hold, else with
// its deviation.
func printRatings(w io.Writer, table rating.Table[string], ranges bool) error {
	var out strings.Builder
	sure := func(p rating.Person[string]) string {
		low, high := p.Interval()
		return fmt.Sprintf("%5.1f to %4.1f", low, high)
	}
	head := "  95 % range"
	if !ranges {
		sure = func(p rating.Person[string]) string { return fmt.Sprintf("%10.2f", p.Sigma) }
		head = " deviation"
	}
	fmt.Fprintf(&out, "%s rating  %s  games\n", fit("name", 30), fit(head, len(sure(rating.Person[string]{}))))
	apart := false
	for _, p := range table {
		fmt.Fprintf(&out, "%s %6.2f  %s  %5d", fit(p.Who, 30), p.Mu, sure(p), p.Games)
		if !p.Comparable {
			apart = true
			fmt.Fprintf(&out, "  not yet (%d)", p.Group+1)
		}
		out.WriteByte('\n')
	}
	if apart {
		out.WriteByte('\n')
		out.WriteString(wrap("not yet: the games do not connect these people with the others, so their ratings can be "+
			"compared only within the group of the same number.", 0) + "\n")
	}
	_, err := io.WriteString(w, out.String())
	return err
}
