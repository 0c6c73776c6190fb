package main

import (
	"os"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/store"
)

// newRestore builds the command that brings a backup back.
func newRestore(opts *options) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "restore BACKUP",
		Short: "Put a backup in the place of the club file",
		Long: `Puts a checked copy of a backup in the place of the club file. What was there stays,
whole or damaged, under another name beside it. The desk must not have the file open. The desk
keeps backups of its own in the folder backups beside the file.`,
		Example: "  quadrille restore /media/stick/club-2026-01-08.qdb",
		Args:    takes(1, 1, "one BACKUP"),
		RunE: func(cmd *cobra.Command, args []string) error {
			path, err := opts.path()
			if err != nil {
				return err
			}
			if err := mustBeThere(args[0]); err != nil {
				return err
			}
			_, missing := os.Lstat(path)
			kept := store.AsideName(path, time.Now())
			if err := store.Restore(args[0], path, kept); err != nil {
				return err
			}
			store.Sweep(path, backupFolder(path))
			note(cmd, "%s is now what %s was", path, args[0])
			if missing == nil {
				note(cmd, "what was there before is now %s", kept)
			}
			return nil
		},
	}
	dataFlag(cmd, opts, clubFile)
	cmd.ValidArgsFunction = first(filesOf("qdb"))
	return cmd
}
