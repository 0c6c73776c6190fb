package main

import (
	"github.com/spf13/cobra"

	"club/quadrille/store"
)

// newBackup builds the command that copies the club file.
func newBackup(opts *options) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "backup FILE",
		Short: "Copy the club file, whole and checked, to a new file",
		Long: `Copies the club file to a new file, as of the last thing that was done, and reads the
copy to make sure of it. It works while the desk is open.
FILE is - for the standard output.`,
		Example: "  quadrille backup /media/stick/club-2026-01-08.qdb",
		Args:    takes(1, 1, "one new FILE"),
		RunE: func(cmd *cobra.Command, args []string) error {
			path, err := opts.existing()
			if err != nil {
				return err
			}
			return throughFile(cmd, args[0], func(to string) error {
				r, err := store.Backup(path, to)
				if err == nil {
					note(cmd, "%s copied to %s and checked", counted(int(r.Records), "event", "events"), calledFile(args[0]))
				}
				return err
			})
		},
	}
	dataFlag(cmd, opts, clubFile)
	cmd.ValidArgsFunction = first(filesOf("qdb"))
	return cmd
}
