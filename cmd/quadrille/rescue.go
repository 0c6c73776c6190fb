package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"club/quadrille/store"
)

// newRescue builds the command that saves what is sound of a damaged file.
func newRescue() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "rescue FILE NEW",
		Short: "Save every sound record of a damaged file into a new one",
		Long: `Searches all of a damaged data file for records whose own bytes are sound, wherever they lie,
and writes them to a new file. The damaged file is not touched. What is lost is listed.
NEW is - for the standard output.`,
		Example: `  quadrille rescue club.qdb rescued.qdb
  quadrille --data rescued.qdb`,
		Args: takes(2, 2, "the damaged FILE and a NEW one"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := mustExist(args[0]); err != nil {
				return err
			}
			return throughFile(cmd, args[1], func(to string) error {
				r, err := store.Rescue(args[0], to)
				if err != nil {
					return err
				}
				told := cmd.OutOrStdout()
				if args[1] == "-" {
					told = cmd.ErrOrStderr() // the file itself goes to the standard output
				}
				fmt.Fprint(told, printable(r.String()))
				note(cmd, "%s saved in %s", counted(int(r.Records), "record", "records"), calledFile(args[1]))
				return nil
			})
		},
	}
	cmd.ValidArgsFunction = first(filesOf("qdb"))
	return cmd
}
