package main

import (
	"github.com/spf13/cobra"

	"club/quadrille/session"
)

// newImport builds the command that takes a roster in.
func newImport(opts *options) *cobra.Command {
	var here bool
	cmd := &cobra.Command{
		Use:   "import ROSTER.csv",
		Short: "Expect the people of a roster at the night that is open",
		Long: `Makes the people of a roster known to the club and expects them at the night that is open, at
the times that the roster states. Who is known by name already is brought up to date. The
desk must not have the file open meanwhile; it can import by itself. ROSTER.csv is - for
the standard input.`,
		Example: `  quadrille import people.csv
  quadrille import people.csv --here`,
		Args: takes(1, 1, "one ROSTER.csv"),
	}
	cmd.Flags().BoolVar(&here, "here", false, "check everybody in whom the roster does not announce for later")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		entries, err := readRoster(cmd, args[0])
		if err != nil {
			return err
		}
		return opts.work(func(desk *session.Desk) error {
			l, err := desk.Do(session.ImportRoster{Entries: entries, Arrived: here})
			if err != nil {
				return err
			}
			n := l.Night()
			note(cmd, "%s of the roster taken in: %d expected and %d here at night %d", counted(len(entries), "person", "people"),
				n.Count(session.Expected), n.Count(session.Here), n.ID)
			return nil
		})
	}
	return cmd
}
