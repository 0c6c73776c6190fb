package main

import (
	"errors"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/store"
)

// newCompact builds the command that writes the club file anew.
func newCompact(opts *options) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "compact",
		Short: "Write the club file anew without the room that it wastes",
		Long: `Writes the club file anew, with every event as it is, and without the room that old pages
leave. The new file is read back before it takes the place of the old one. The desk does this by
itself when a night ends and more than half of the file is free; it must not have the file open
meanwhile.`,
		Example: "  quadrille compact --data club.qdb",
		Args:    nothing,
		RunE: func(cmd *cobra.Command, _ []string) error {
			path, err := opts.existing()
			if err != nil {
				return err
			}
			return compact(cmd, path)
		},
	}
	dataFlag(cmd, opts, clubFile)
	return cmd
}

func compact(cmd *cobra.Command, path string) (err error) {
	kept, err := openClub(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, kept.Close()) }()
	before, err := kept.Report()
	if err != nil {
		return err
	}
	if err := kept.Compact(); err != nil {
		return err
	}
	if err := keepSnapshot(kept); err != nil {
		return err
	}
	after, err := kept.Report()
	if err != nil {
		return err
	}
	note(cmd, "%s in %d KiB, before in %d KiB", counted(int(after.Records), "event", "events"), after.Bytes>>10, before.Bytes>>10)
	return nil
}

// keepSnapshot folds all records of a file and keeps a snapshot in it, if one is worth it.
func keepSnapshot(kept *store.Store) error {
	ledger, err := session.Load(kept.Records(1))
	if err != nil {
		return err
	}
	s, ok, err := ledger.Snapshot()
	if err != nil || !ok {
		return err
	}
	return kept.KeepSnapshot(s)
}
