package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// options are the flags that every command takes.
type options struct {
	data string // the data file as named on the command line, "" when it was not
}

// newRoot builds the tree of commands.
func newRoot() *cobra.Command {
	opts := &options{}
	root := &cobra.Command{
		Use:   "quadrille",
		Short: "Run a club's doubles night",
		Long: `Quadrille runs a club's doubles night from the first check-in to the last standings.
Without a command it opens the desk on the club's data file.`,
		Example: `  quadrille
  quadrille demo
  quadrille plan --players 18 --courts 4 --rounds 9`,
		Version:       buildVersion(),
		Args:          noCommand,
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE:          func(cmd *cobra.Command, _ []string) error { return runDesk(cmd, opts) },
	}
	root.SetVersionTemplate("quadrille {{.Version}}\n")
	root.PersistentFlags().StringVar(&opts.data, "data", "", "data `file` of the club (default: $QUADRILLE_DATA, else in the user's data folder)")
	root.AddCommand(
		newDemo(), newPlan(), newAudit(), newCall(), newSimulate(opts), newStandings(opts),
		newExport(opts), newImport(opts), newBackup(opts), newCheck(opts), newRescue(), newPace(), newRate(opts), newDrill(),
		newRestore(opts), newForget(opts), newCompact(opts),
	)
	refusing(root)
	root.SetUsageTemplate(strings.ReplaceAll(root.UsageTemplate(), "FlagUsages", fmt.Sprintf("FlagUsagesWrapped %d", columns)))
	narrow(root)
	return root
}

// narrow makes what c and the commands below it tell of themselves fit the columns.
func narrow(c *cobra.Command) {
	paragraphs := strings.Split(c.Long, "\n\n")
	for i, p := range paragraphs {
		paragraphs[i] = wrap(strings.ReplaceAll(p, "\n", " "), 0)
	}
	c.Long = strings.Join(paragraphs, "\n\n")
	for _, sub := range c.Commands() {
		narrow(sub)
	}
}

// noCommand refuses a word that is no command, and offers the ones that it may have been.
func noCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	near := cmd.SuggestionsFor(args[0])
	if len(near) == 0 {
		return usagef("there is no command %q", args[0])
	}
	return usagef("there is no command %q: did you mean %s?", args[0], strings.Join(near, " or "))
}

// takes is the rule for a command's arguments: from least to most of them, named in the message.
func takes(least, most int, what string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) < least || len(args) > most {
			return usagef("this command takes %s, not %s", what, counted(len(args), "argument", "arguments"))
		}
		return nil
	}
}

// nothing is the rule of commands without arguments.
var nothing = takes(0, 0, "flags only")
