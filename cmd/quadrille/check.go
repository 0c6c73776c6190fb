package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/store"
)

// newCheck builds the command that looks a data file over.
func newCheck(opts *options) *cobra.Command {
	return &cobra.Command{
		Use:   "check [FILE]",
		Short: "Look a data file over and say what is wrong with it",
		Long: `Reads all of a data file, the club's own if none is named: the structure, the checksum and the
order of every record, and plays every night again from its records. It changes nothing. The
exit code is 1 if anything is wrong.`,
		Example: `  quadrille check
  quadrille check club-2026-01-08.qdb`,
		Args: takes(0, 1, "at most one FILE"),
		RunE: func(cmd *cobra.Command, args []string) error {
			path, err := named(opts, args)
			if err != nil {
				return err
			}
			r, err := store.Check(path)
			if err != nil {
				return err
			}
			fmt.Fprint(cmd.OutOrStdout(), printable(r.String()))
			if !r.Sound() {
				return fmt.Errorf("%s is damaged: save what is sound with \"quadrille rescue %s NEW\"", path, path)
			}
			return replay(cmd, path)
		},
	}
}

// named is the file that a command was given, or the club's.
func named(opts *options, args []string) (string, error) {
	if len(args) == 0 {
		return opts.existing()
	}
	return args[0], mustExist(args[0])
}

// replay folds all records of a sound file, as opening it does, and tells what they come to.
func replay(cmd *cobra.Command, path string) error {
	view, err := store.Look(path)
	if err != nil {
		return err
	}
	ledger, err := session.Load(view.Records(1))
	if err != nil {
		return fmt.Errorf("the records are sound but do not make a night: %w", err)
	}
	games := 0
	for _, n := range ledger.Club().Nights {
		games += len(n.Games)
	}
	fmt.Fprintf(cmd.OutOrStdout(), "played again: %s, %s, %s\n", counted(len(ledger.Club().People), "person", "people"),
		counted(len(ledger.Club().Nights), "night", "nights"), counted(games, "game", "games"))
	return nil
}
