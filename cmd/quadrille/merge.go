package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"club/quadrille/session"
)

// newMerge builds the command that makes one person of two.
func newMerge(opts *options) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "merge NAME INTO",
		Short: "Make one person of two who turned out to be one",
		Long: `Makes one person of two whom the club knows under two spellings: all games of NAME count for
INTO from then on, in every night, table and rating, and NAME finds INTO. Who was in one game or
one round with the other is two people, and is refused. The history of the desk (h) undoes it
until the next night is opened. The desk must not have the file open.`,
		Example: `  quadrille merge "Anna Bergh" "Anna Berg"`,
		Args:    takes(2, 2, "the NAME that goes and the name INTO which it goes (in quotes)"),
	}
	dataFlag(cmd, opts, clubFile)
	cmd.ValidArgsFunction = opts.names
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		path, err := opts.existing()
		if err != nil {
			return err
		}
		return work(path, func(desk *session.Desk) error {
			var who [2]session.Person
			for i, name := range args {
				var known bool
				if who[i], known = desk.Ledger().Club().Named(name); !known {
					return fmt.Errorf("the club knows nobody called %s: write the whole name as the standings do", name)
				}
			}
			if _, err := desk.Do(session.MergePeople{From: who[0].ID, Into: who[1].ID}); err != nil {
				return err
			}
			note(cmd, "%s and %s are one person now, called %s", who[0].Name, who[1].Name, who[1].Name)
			return nil
		})
	}
	return cmd
}
