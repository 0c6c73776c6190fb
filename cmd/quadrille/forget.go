package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/store"
)

// newForget builds the command that removes a person's name for good.
func newForget(opts *options) *cobra.Command {
	var yes bool
	cmd := &cobra.Command{
		Use:   "forget NAME",
		Short: "Remove a person's name from every record, for good",
		Long: `Writes the club's data file anew without a person's name and what was noted about the person,
and does the same to the backups that the desk keeps. Results stay, under a neutral label.
This cannot be undone. Copies that you made elsewhere are not touched. The desk must not have
the file open.`,
		Example: `  quadrille forget "Ann Other" --yes`,
		Args:    takes(1, 1, "one NAME (in quotes)"),
	}
	dataFlag(cmd, opts, clubFile)
	cmd.ValidArgsFunction = first(opts.names)
	cmd.Flags().BoolVar(&yes, "yes", false, "do it; without this flag nothing is changed")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		path, err := opts.existing()
		if err != nil {
			return err
		}
		return forget(cmd, path, args[0], yes)
	}
	return cmd
}

// forget removes a name from a data file and from its backups.
func forget(cmd *cobra.Command, path, name string, yes bool) (err error) {
	kept, err := store.Open(path, store.CreatedBy(buildVersion()))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, kept.Close()) }()
	ledger, err := session.Load(kept.Records(1))
	if err != nil {
		return err
	}
	person, ok := ledger.Club().Named(name)
	if !ok {
		return fmt.Errorf("the club knows nobody called %s: write the whole name as the standings do", name)
	}
	change, label, err := session.Forget(ledger.Club(), person.ID)
	if err != nil {
		return err
	}
	backups, err := copiesOf(path)
	if err != nil {
		return err
	}
	if !yes {
		return fmt.Errorf("%s would become %s for good, in %s and in %s: add --yes to do it", person.Name, label, path,
			counted(len(backups), "backup", "backups"))
	}
	if err := kept.Rewrite(change); err != nil {
		return err
	}
	note(cmd, "%s is forgotten: results stay under the name %s", person.Name, label)
	return forgetIn(backups, change)
}

// forgetIn removes the name from backups. One that cannot be rewritten does not spare the others.
func forgetIn(backups []string, change func(session.Record) session.Record) error {
	var failed []error
	for _, path := range backups {
		backup, err := store.Open(path)
		if err == nil {
			err = errors.Join(backup.Rewrite(change), backup.Close())
		}
		if err != nil {
			failed = append(failed, fmt.Errorf("the name may still stand in %s: remove that backup: %w", path, err))
		}
	}
	return errors.Join(failed...)
}
