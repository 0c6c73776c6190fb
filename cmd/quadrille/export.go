package main

import (
	"io"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/session"
)

// newExport builds the command that writes a club's records for other programs.
func newExport(opts *options) *cobra.Command {
	var events, games, people bool
	var night, file string
	cmd := &cobra.Command{
		Use:   "export",
		Short: "Write all events as JSON Lines, or games or people as CSV",
		Long: `Writes everything that the club file holds as JSON Lines, an event a line; with --games the
finished games as CSV for a spreadsheet, which standings and rate read too; with --people
everybody the club knows as CSV, which import takes in as a roster. Cells that a spreadsheet
would take for a formula get an apostrophe in front. It works while the desk is open.`,
		Example: `  quadrille export --out club.jsonl
  quadrille export --games --night 3 --out night3.csv
  quadrille export --people --out people.csv`,
		Args: nothing,
	}
	flags := cmd.Flags()
	flags.BoolVar(&events, "events", false, "write all events as JSON Lines (the default)")
	flags.BoolVar(&games, "games", false, "write the finished games as CSV")
	flags.BoolVar(&people, "people", false, "write everybody the club knows as CSV")
	addFile(cmd, &file, "out", "write to this new `file` in place of the standard output (-)", "jsonl", "csv")
	dataFlag(cmd, opts, clubFile)
	nightFlag(cmd, opts, &night, "all")
	excludes(cmd, "events", "games", "people")
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		if night != "" && !games {
			return usagef("--night goes with --games: events and people are exported all together")
		}
		if err := mustNameNight(night); err != nil {
			return err
		}
		view, ledger, err := opts.look()
		if err != nil {
			return err
		}
		return writeTo(cmd, file, func(w io.Writer) error {
			switch {
			case people:
				return session.ExportPeople(w, ledger.Club(), time.Local)
			case !games:
				return session.ExportEvents(w, view.Records(1))
			}
			nights := ledger.Club().Nights
			if night != "" {
				n, err := nightOf(ledger.Club(), night)
				if err != nil {
					return err
				}
				nights = []*session.Night{n}
			}
			return session.ExportGames(w, ledger.Club(), nights, time.Local)
		})
	}
	return cmd
}
