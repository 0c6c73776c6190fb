package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// options are what several commands are told.
type options struct {
	data string // the club file as named on the command line, "" when it was not
}

// The purposes by which the help groups the commands.
const (
	forNight = "night"
	forPlans = "plans"
	forCalls = "calls"
	forFile  = "file"
	forHelp  = "help"
)

// newRoot builds the tree of commands.
func newRoot() *cobra.Command {
	opts := &options{}
	root := &cobra.Command{
		Use:   "quadrille",
		Short: "Run a club's doubles night",
		Long: `Quadrille runs a club's doubles night from the first check-in to the last standings.
Without a command it opens the desk on the club file.`,
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
	dataFlag(root, opts, clubFile)
	root.Flags().Bool("version", false, "show the version")
	root.SetFlagErrorFunc(misuse)
	group(root, forNight, "The night, its people and tables", newDemo(), newBoard(opts), newShare(opts), newImport(opts), newMerge(opts), newSync(opts), newStandings(opts), newPartners(opts), newSummary(opts), newRate(opts), newExport(opts), newPrint(opts), newEnter(opts), newHeat(), newCard(opts))
	group(root, forPlans, "Rotations and forecasts", newPlan(), newAudit(), newFit(opts), newSimulate(opts), newPace())
	group(root, forCalls, "The call", newCall(), newDrill())
	group(root, forFile, "The club file", newBackup(opts), newRestore(opts), newCheck(opts), newRescue(), newCompact(opts), newForget(opts))
	help := newHelp()
	group(root, forHelp, "Help", newSettings(), newCompletion(), help)
	root.AddCommand(newDocs())
	root.SetHelpCommand(help)
	refusing(root)
	root.SetUsageTemplate(usageTemplate)
	narrow(root)
	return root
}

// group adds commands under a heading of the help.
func group(root *cobra.Command, id, title string, commands ...*cobra.Command) {
	root.AddGroup(&cobra.Group{ID: id, Title: title})
	for _, c := range commands {
		c.GroupID = id
	}
	root.AddCommand(commands...)
}

// narrow makes what c and the commands below it tell of themselves fit the columns, and gives each
// the flag that asks for it.
func narrow(c *cobra.Command) {
	c.Flags().SortFlags = false // in the order in which somebody needs them
	c.Flags().BoolP("help", "h", false, "show this help")
	paragraphs := strings.Split(c.Long, "\n\n")
	for i, p := range paragraphs {
		paragraphs[i] = wrap(strings.ReplaceAll(p, "\n", " "), 0)
	}
	c.Long = strings.Join(paragraphs, "\n\n")
	for _, sub := range c.Commands() {
		narrow(sub)
	}
}

// commandNames lists the commands that a person may use.
func commandNames(root *cobra.Command) (names []string) {
	for _, c := range root.Commands() {
		if !c.Hidden {
			names = append(names, c.Name())
		}
	}
	return names
}

// noCommand refuses a word that is no command, and offers the ones that it may have been.
func noCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return usagef("there is no command %s%s", quoted(args[0]), meant(args[0], commandNames(cmd.Root())))
}

// takes is the rule for a command's arguments: from least to most of them, named in the message.
func takes(least, most int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) < least || len(args) > most {
			return usagef("%s takes %s, not %s", cmd.Name(), what, counted(len(args), "argument", "arguments"))
		}
		for _, text := range args {
			if strings.TrimSpace(text) == "" {
				return usagef("%s takes %s, not an empty text", cmd.Name(), what)
			}
		}
		return nil
	}
}

// nothing is the rule of commands without arguments.
var nothing = takes(0, 0, "flags only")

// usageTemplate is how the help of a command is laid out behind its description.
var usageTemplate = fmt.Sprintf(`Usage:
  {{if .HasParent}}{{.UseLine}}{{else}}quadrille [flags]
  quadrille COMMAND [flags]{{end}}{{if .HasExample}}

Examples:
{{.Example}}{{end}}{{$all := .Commands}}{{range $group := .Groups}}

{{.Title}}:{{range $all}}{{if and (eq .GroupID $group.ID) (not .Hidden)}}
  {{rpad .Name .NamePadding}} {{.Short}}{{end}}{{end}}{{end}}{{if .HasAvailableLocalFlags}}

Flags:
{{.LocalFlags.FlagUsagesWrapped %d | trimTrailingWhitespaces}}{{end}}{{if not .HasParent}}

%s{{end}}
`, columns, surroundings)

// surroundings is what the help says of the environment and of the exit codes.
const surroundings = `Environment:
  QUADRILLE_DATA        names the club file where --data does not
  XDG_DATA_HOME         the folder for your data; the club file is
                        quadrille/club.qdb in it
  XDG_CONFIG_HOME       the folder for your settings; those of the desk are in
                        quadrille/desk.toml, see "quadrille settings --help"
  QUADRILLE_BACKGROUND  light or dark: the background of your terminal, where it
                        does not answer (COLORFGBG is read too)
  QUADRILLE_GLYPHS      ascii: draw with plain characters
  NO_COLOR              no colours when it is set to anything
  CLICOLOR_FORCE        colours although the terminal seems to have none
  TERM                  dumb: no screens and no progress

Exit codes:
  0  fine
  1  refused, or something was found wrong
  2  the command line is wrong

"quadrille COMMAND --help" tells more of a command, "quadrille help formats" of
every file form and JSON field.`
