package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/sheet"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/standings"
	"club/quadrille/tui/line"
)

// table is what the flags of standings ask for.
type table struct {
	opts      *options
	games     string // a spreadsheet in place of the club file
	night     string
	league    bool
	span      spanFlags
	best      int
	intervals bool
	json      bool
	csv       bool
	foot      string // which games of a night count otherwise than played ones
}

// newStandings builds the command that prints a table.
func newStandings(opts *options) *cobra.Command {
	t := table{opts: opts}
	cmd := &cobra.Command{
		Use:   "standings",
		Short: "Print the table of a night, of all nights, or of any spreadsheet",
		Long: `Prints the table of a night of the club, or with --games of a CSV file with the header
a1,a2,b1,b2,score_a,score_b (a2 and b2 empty for singles; a column night may tell nights
apart). With --league all nights are added up: each is worth 100 times the win share. It works
while the desk is open.`,
		Example: `  quadrille standings
  quadrille standings --night 2026-01-08 --json
  quadrille standings --league --best 8 --csv
  quadrille standings --league --from 2026-01-01 --level-from 3.5
  quadrille standings --games season.csv --intervals`,
		Args: nothing,
	}
	flags := cmd.Flags()
	dataFlag(cmd, opts, clubFile)
	nightFlag(cmd, opts, &t.night, "the newest; all with --games")
	addFile(cmd, &t.games, "games", "take the games of this CSV `file` (- for the standard input)", "csv")
	flags.BoolVar(&t.league, "league", false, "add all nights up")
	addWhole(cmd, &t.best, "best", 1, 10_000, "with --league, count the best `N` nights of each person (default: as the desk has it, else all)")
	t.span.add(cmd, "with --league, ")
	flags.BoolVar(&t.intervals, "intervals", false, "add the 95 % range of each win share, in place of points for and against")
	flags.BoolVar(&t.json, "json", false, "print the table as JSON")
	flags.BoolVar(&t.csv, "csv", false, "print the table as CSV for a spreadsheet, with the 95 % range")
	excludes(cmd, "json", "csv")
	excludes(cmd, "games", "data")
	excludes(cmd, "league", "night")
	excludes(cmd, "league", "intervals")
	goesWith(cmd, "best", "league")
	for _, name := range spanNames {
		goesWith(cmd, name, "league")
		excludes(cmd, name, "games")
	}
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		if t.league {
			return t.printLeague(cmd)
		}
		return t.print(cmd)
	}
	return cmd
}

// print prints the table of one night, or of a spreadsheet.
func (t *table) print(cmd *cobra.Command) error {
	title, rows, err := t.rows(cmd)
	switch {
	case err != nil:
		return err
	case t.csv:
		return standings.WriteCSV(cmd.OutOrStdout(), rows)
	case t.json && t.intervals:
		return printJSON(cmd.OutOrStdout(), withIntervals(rows))
	case t.json:
		return printJSON(cmd.OutOrStdout(), rows)
	}
	if err := printStandings(cmd.OutOrStdout(), title, rows, t.intervals); err != nil || t.foot == "" {
		return err
	}
	_, err = fmt.Fprintf(cmd.OutOrStdout(), "%s\n", wrap(t.foot, 0))
	return err
}

// rows makes the table, never nil, and its title.
func (t *table) rows(cmd *cobra.Command) (title string, rows []standings.Row, err error) {
	if t.games != "" {
		played, err := tableGames(cmd, t.games, t.night)
		if err != nil {
			return "", nil, err
		}
		return counted(len(played), "game", "games"), append([]standings.Row{}, tableOf(played)...), nil
	}
	if err := mustNameNight(t.night); err != nil {
		return "", nil, err
	}
	_, ledger, err := t.opts.look()
	if err != nil {
		return "", nil, err
	}
	n, err := nightOf(ledger.Club(), t.night)
	if err != nil {
		return "", nil, err
	}
	title = fmt.Sprintf("Night %d, %s", n.ID, date(n))
	if n.Name != "" {
		title += ": " + n.Name
	}
	if n.IsOpen() {
		title += " (still open)"
	}
	t.foot = n.TableNote()
	return title, append([]standings.Row{}, session.Standings(ledger.Club(), n)...), nil
}

// tableOf makes a table of the games of a spreadsheet.
func tableOf(games []sheet.Game) []standings.Row {
	results := make([]standings.Result, len(games))
	for i, g := range games {
		results[i] = g.Result
	}
	return standings.Table(results, nil)
}

// readGames reads the games of a spreadsheet, of one night if one is named.
func readGames(cmd *cobra.Command, path, night string) ([]sheet.Game, error) {
	in, err := openInput(cmd, path)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	read, err := sheet.Games(in)
	if err != nil {
		return nil, err
	}
	for _, text := range read.Notes {
		note(cmd, "games: %s", text)
	}
	if night != "" {
		return read.Night(night)
	}
	return read.Games, nil
}

// tableGames reads the games of a spreadsheet that count for a table, as a night's own do, and says which do
// not.
func tableGames(cmd *cobra.Command, path, night string) ([]sheet.Game, error) {
	played, err := readGames(cmd, path, night)
	if err != nil {
		return nil, err
	}
	played, left := sheet.Without(played, scoring.Retired, scoring.Walkover, scoring.Void)
	if left != "" {
		note(cmd, "%s", left)
	}
	return played, nil
}

// printStandings writes a table for people. Below it stands how it is sorted and what parted those
// who were level.
func printStandings(w io.Writer, title string, rows []standings.Row, intervals bool) error {
	var out strings.Builder
	fmt.Fprintf(&out, "%s\n\n", title)
	if len(rows) == 0 {
		out.WriteString("No game is finished yet.\n")
		_, err := io.WriteString(w, out.String())
		return err
	}
	draws := slices.ContainsFunc(rows, func(r standings.Row) bool { return r.Draws > 0 })
	name := 26
	if draws {
		name = 20
	}
	column := func(shown bool, format string, values ...any) {
		if shown {
			fmt.Fprintf(&out, format, values...)
		}
	}
	fmt.Fprintf(&out, "place %s games  won lost", fit("name", name))
	column(draws, " drawn")
	column(!intervals, "   for against")
	out.WriteString("   diff  win share")
	column(intervals, "   95 %% range")
	out.WriteByte('\n')
	for _, r := range rows {
		fmt.Fprintf(&out, "%4d  %s %5d %4d %4d", r.Rank, fit(r.Name, name), r.Games, r.Wins, r.Losses)
		column(draws, " %5d", r.Draws)
		column(!intervals, " %5d %7d", r.PointsFor, r.PointsAgainst)
		fmt.Fprintf(&out, " %+6d  %9s", r.Difference, line.Percent(r.WinShare))
		column(intervals, "  %11s", line.Range(r.Interval()))
		out.WriteByte('\n')
	}
	fmt.Fprintf(&out, "\n%s\n", wrap("Sorted by "+standings.Order+".", 0))
	for _, r := range rows {
		if r.Why != "" {
			fmt.Fprintf(&out, "%4d  %s\n", r.Rank, wrap(r.Name+": "+r.Why, 6))
		}
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// interval is a row with the 95 % range of its win share.
type interval struct {
	standings.Row
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

func withIntervals(rows []standings.Row) []interval {
	out := make([]interval, len(rows))
	for i, r := range rows {
		out[i].Row = r
		out[i].Low, out[i].High = r.Interval()
	}
	return out
}
