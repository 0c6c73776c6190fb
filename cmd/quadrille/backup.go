package main

import (
	"github.com/spf13/cobra"

	"club/quadrille/store"
)

// newBackup builds the command that copies the data file.
func newBackup(opts *options) *cobra.Command {
	return &cobra.Command{
		Use:   "backup FILE",
		Short: "Copy the data file, whole and checked, to a new file",
		Long: `Copies the club's data file to a new file, as of the last thing that was done, and reads the
copy to make sure of it. It works while the desk is open.`,
		Example: "  quadrille backup /media/stick/club-2026-01-08.qdb",
		Args:    takes(1, 1, "one new FILE"),
		RunE: func(cmd *cobra.Command, args []string) error {
			path, err := opts.existing()
			if err != nil {
				return err
			}
			r, err := store.Backup(path, args[0])
			if err != nil {
				return err
			}
			note(cmd, "%s copied to %s and checked", counted(int(r.Records), "record", "records"), args[0])
			return nil
		},
	}
}
