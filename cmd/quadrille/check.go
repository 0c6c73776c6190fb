package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/store"
)

// newCheck builds the command that looks a club file over.
func newCheck(opts *options) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "check [FILE]",
		Short: "Look the club file over and say what is wrong with it",
		Long: `Reads all of a club file, your club's if none is named: its structure, the checksum and the order
of every event; plays every night again from its events; and compares the state that is kept to
quicken opening with what the events come to. It changes nothing, and works while the desk is
open. The exit code is 1 if anything is wrong.`,
		Example: `  quadrille check
  quadrille check club-2026-01-08.qdb`,
		Args: takes(0, 1, "at most one FILE"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := oneFile(cmd, args); err != nil {
				return err
			}
			path, err := named(opts, args)
			if err != nil {
				return err
			}
			r, err := store.Check(path)
			if err != nil {
				return err
			}
			say(cmd, "%s", r)
			if !r.Sound() {
				return fmt.Errorf("%s is damaged: save what is sound with \"quadrille rescue %s NEW\"", path, path)
			}
			view, err := store.Look(path)
			if err != nil {
				return err
			}
			if err := replay(cmd, view); err != nil {
				return err
			}
			return checkSnapshot(cmd, view)
		},
	}
	dataFlag(cmd, opts, clubFile)
	cmd.ValidArgsFunction = first(filesOf("qdb"))
	return cmd
}

// named is the file that a command was given, or the club's.
func named(opts *options, args []string) (string, error) {
	if len(args) == 0 {
		return opts.existing()
	}
	return args[0], mustBeThere(args[0])
}

// say writes a part of what was asked for, fit for a screen.
func say(cmd *cobra.Command, format string, args ...any) {
	fmt.Fprint(cmd.OutOrStdout(), printable(fmt.Sprintf(format, args...)))
}

// replay folds all records of a sound file, from the first one on, and tells what they come to. What
// a rescue had to leave out is listed, and is no fault of this file.
func replay(cmd *cobra.Command, view *store.View) error {
	ledger, err := session.Load(view.Records(1))
	if err != nil {
		return fmt.Errorf("the events are sound but do not make a night: %w", err)
	}
	games := 0
	for _, n := range ledger.Club().Nights {
		games += len(n.Games)
	}
	say(cmd, "played again: %s, %s, %s\n", counted(len(ledger.Club().People), "person", "people"),
		counted(len(ledger.Club().Nights), "night", "nights"), counted(games, "game", "games"))
	if !ledger.Lossy() {
		return nil
	}
	lost := 0
	for r := range view.Records(1) {
		if r.Kind == store.LostKind {
			lost++
		}
	}
	say(cmd, "note: %s lost before this file was rescued\n", counted(lost, "event was", "events were"))
	for _, text := range ledger.Skipped() {
		say(cmd, "note: not used, since it rests on a lost event: %s\n", text)
	}
	return nil
}

// checkSnapshot compares the snapshot of a sound file, if it has one, with its records.
func checkSnapshot(cmd *cobra.Command, view *store.View) error {
	s, ok, err := view.CheckSnapshot()
	if err == nil && ok {
		err = session.CheckSnapshot(view, s)
	}
	switch {
	case err != nil:
		say(cmd, "wrong: %v\n", err)
		return fmt.Errorf("no event is lost, but the snapshot that quickens opening is wrong: remove it with \"quadrille compact\"")
	case ok:
		say(cmd, "the snapshot up to event %d is what the events come to\n", s.Seq)
	}
	return nil
}
