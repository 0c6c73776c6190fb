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

// printLeague prints the table over all nights, of the club or of a spreadsheet.
func (t *table) printLeague(cmd *cobra.Command) error {
	nights, rows, err := t.leagueRows(cmd)
	switch {
	case err != nil:
		return err
	case t.csv:
		return standings.WriteLeagueCSV(cmd.OutOrStdout(), rows)
	case t.json:
		return printJSON(cmd.OutOrStdout(), append([]standings.LeagueRow{}, rows...))
	}
	return printLeagueTable(cmd.OutOrStdout(), nights, t.best, t.span.Span, rows)
}

// leagueRows makes the league, and counts its nights.
func (t *table) leagueRows(cmd *cobra.Command) (nights int, rows []standings.LeagueRow, err error) {
	if t.games == "" {
		_, ledger, err := t.opts.look()
		if err != nil {
			return 0, nil, err
		}
		if !cmd.Flags().Changed("best") {
			t.best = ledger.Club().Best
		}
		return t.span.Nights(ledger.Club()), session.League(ledger.Club(), t.best, t.span.Span), nil
	}
	played, err := tableGames(cmd, t.games, "")
	if err != nil {
		return 0, nil, err
	}
	var order []string
	byNight := map[string][]sheet.Game{}
	for _, g := range played {
		if g.Night == "" {
			return 0, nil, fmt.Errorf("games line %d: a league needs the column night in every line", g.Line)
		}
		if byNight[g.Night] == nil {
			order = append(order, g.Night)
		}
		byNight[g.Night] = append(byNight[g.Night], g)
	}
	tables := make([][]standings.Row, len(order))
	for i, night := range order {
		tables[i] = tableOf(byNight[night])
	}
	return len(order), standings.League(tables, t.best), nil
}

// printLeagueTable writes the league for people.
func printLeagueTable(w io.Writer, nights, best int, span session.Span, rows []standings.LeagueRow) error {
	var out strings.Builder
	of := ""
	if !span.IsZero() {
		of = ": " + span.Words()
	}
	fmt.Fprintf(&out, "League of %s%s\n\n", counted(nights, "night", "nights"), of)
	fmt.Fprintf(&out, "place %s points  counted  nights  games  won\n", fit("name", 34))
	for _, r := range rows {
		fmt.Fprintf(&out, "%4d  %s %6.1f  %7d  %6d  %5d  %3d\n", r.Rank, fit(r.Name, 34), r.Points, r.Counts, r.Nights, r.Games, r.Wins)
	}
	which := "All nights count."
	if best > 0 {
		which = fmt.Sprintf("The best %s of each person count.", counted(best, "night", "nights"))
	}
	fmt.Fprintf(&out, "\n%s\n", wrap("A night is worth 100 times the win share. "+which+
		" Sorted by points; nights attended; share of all games won.", 0))
	_, err := io.WriteString(w, out.String())
	return err
}
