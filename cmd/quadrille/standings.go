package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/cmd/quadrille/sheet"
	"club/quadrille/session"
	"club/quadrille/session/standings"
)

// newStandings builds the command that prints a table.
func newStandings(opts *options) *cobra.Command {
	var games, night string
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "standings",
		Short: "Print the table of a night, or of any spreadsheet of games",
		Long: `Prints the table of a night of the club, or with --games of a CSV file with the header
a1,a2,b1,b2,score_a,score_b (a2 and b2 empty for singles; a column night may tell nights
apart). It works while the desk is open.`,
		Example: `  quadrille standings
  quadrille standings --night 2026-01-08 --json
  quadrille standings --games season.csv`,
		Args: nothing,
	}
	nightFlag(cmd, &night, "the newest; all with --games")
	cmd.Flags().StringVar(&games, "games", "", "take the games of this CSV `file` (- for the standard input)")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the table as JSON")
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		title, rows, err := tableOf(cmd, opts, games, night)
		if err != nil {
			return err
		}
		if asJSON {
			return printJSON(cmd.OutOrStdout(), rows)
		}
		return printStandings(cmd.OutOrStdout(), title, rows)
	}
	return cmd
}

// tableOf makes the table that the flags ask for, never nil, and its title.
func tableOf(cmd *cobra.Command, opts *options, games, night string) (title string, rows []standings.Row, err error) {
	if games != "" {
		played, err := readGames(cmd, games, night)
		if err != nil {
			return "", nil, err
		}
		results := make([]standings.Result, len(played))
		for i, g := range played {
			results[i] = g.Result
		}
		return counted(len(results), "game", "games"), append([]standings.Row{}, standings.Table(results, nil)...), nil
	}
	_, ledger, err := opts.look()
	if err != nil {
		return "", nil, err
	}
	n, err := nightOf(ledger.Club(), night)
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
	return title, append([]standings.Row{}, session.Standings(ledger.Club(), n)...), nil
}

// readGames reads the games of a spreadsheet, of one night if one is named.
func readGames(cmd *cobra.Command, path, night string) ([]sheet.Game, error) {
	in, err := openInput(cmd, path)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	games, err := sheet.Games(in)
	if err != nil || night == "" {
		return games, err
	}
	var of []sheet.Game
	for _, g := range games {
		if g.Night == night {
			of = append(of, g)
		}
	}
	if of == nil {
		return nil, fmt.Errorf("no game has %s in its column night", night)
	}
	return of, nil
}

// printStandings writes a table for people. Below it stands how it is sorted and what parted those
// who were level.
func printStandings(w io.Writer, title string, rows []standings.Row) error {
	var out strings.Builder
	fmt.Fprintf(&out, "%s\n\n", title)
	if len(rows) == 0 {
		out.WriteString("No game is finished yet.\n")
		_, err := io.WriteString(w, out.String())
		return err
	}
	draws := false
	for _, r := range rows {
		draws = draws || r.Draws > 0
	}
	fmt.Fprintf(&out, "rank  %s games  won lost", fit("name", 26))
	if draws {
		out.WriteString(" even")
	}
	out.WriteString("   for  agst   diff  share\n")
	for _, r := range rows {
		fmt.Fprintf(&out, "%4d  %s %5d %4d %4d", r.Rank, fit(r.Name, 26), r.Games, r.Wins, r.Losses)
		if draws {
			fmt.Fprintf(&out, " %4d", r.Draws)
		}
		fmt.Fprintf(&out, " %5d %5d %+6d  %.3f\n", r.PointsFor, r.PointsAgainst, r.Difference, r.WinShare)
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
