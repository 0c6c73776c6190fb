package main

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"club/quadrille/store"
)

// newRescue builds the command that saves what is sound of a damaged file.
func newRescue() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "rescue FILE NEW",
		Short: "Save every sound event of a damaged file into a new one",
		Long: `Searches all of a damaged club file for events whose own bytes are sound, wherever they lie,
and writes them to a new file. The damaged file is not touched. What is lost is listed, and what
may be; the exit code is 1 then, though the new file is there. NEW is - for the standard output.`,
		Example: `  quadrille rescue club.qdb rescued.qdb
  quadrille --data rescued.qdb`,
		Args: takes(2, 2, "the damaged FILE and a NEW one"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := mustBeThere(args[0]); err != nil {
				return err
			}
			var r store.Report
			err := throughFile(cmd, args[1], func(to string) (err error) {
				if r, err = store.Rescue(args[0], to); err != nil {
					return err
				}
				told := cmd.OutOrStdout()
				if args[1] == "-" {
					told = cmd.ErrOrStderr() // the file itself goes to the standard output
				}
				fmt.Fprint(told, printable(r.String()))
				note(cmd, "%s saved in %s", counted(int(r.Records), "event", "events"), calledFile(args[1]))
				return nil
			})
			if err != nil {
				return err
			}
			return notAll(r)
		},
	}
	cmd.ValidArgsFunction = first(filesOf("qdb"))
	return cmd
}

// notAll says what a rescue could not save, or cannot know that it has saved.
func notAll(r store.Report) error {
	lost, open := int(r.Last-r.Records), ""
	if r.OpenEnd {
		open = fmt.Sprintf("events after %d may be missing", r.Last)
	}
	switch {
	case lost == 0 && open == "":
		return nil
	case lost == 0:
		return errors.New(open)
	case open != "":
		open = ", and " + open
	}
	return fmt.Errorf("%s lost%s", counted(lost, "event is", "events are"), open)
}
