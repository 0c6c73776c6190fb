package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// What is wrong with a command line is said here, in sentences that name the flag or the word and
// what to do. Cobra's own texts are never shown.

// misuse tells what is wrong with the flags of a command.
func misuse(cmd *cobra.Command, err error) error {
	if root := cmd.Root(); cmd == root && root.Flags().NArg() > 0 {
		return noCommand(cmd, root.Flags().Args()) // the first mistake is in the command's name
	}
	var (
		unknown *pflag.NotExistError
		missing *pflag.ValueRequiredError
		invalid *pflag.InvalidValueError
		syntax  *pflag.InvalidSyntaxError
	)
	switch {
	case errors.As(err, &unknown):
		return noFlag(cmd, unknown)
	case errors.As(err, &missing):
		return usagef("--%s takes %s: write it behind the flag", missing.GetFlag().Name, takenBy(missing.GetFlag()))
	case errors.As(err, &invalid):
		return usagef("--%s takes %s, not %s", invalid.GetFlag().Name, takenBy(invalid.GetFlag()), quoted(invalid.GetValue()))
	case errors.As(err, &syntax):
		return usagef("%s is no flag: flags are two dashes and a word, such as --json", quoted(syntax.GetSpecifiedFlag()))
	}
	return usage{err}
}

// takenBy says which values a flag takes.
func takenBy(flag *pflag.Flag) string {
	if v, ok := flag.Value.(interface{ Takes() string }); ok {
		return v.Takes()
	}
	return "no value (write --" + flag.Name + ", or leave it out)"
}

// quoted shows what somebody typed, short and fit for a screen.
func quoted(text string) string {
	if text == "" {
		return "an empty text"
	}
	return `"` + cut(printable(text), columns/2) + `"`
}

// noFlag tells of a flag that the command has not.
func noFlag(cmd *cobra.Command, err *pflag.NotExistError) error {
	name := err.GetSpecifiedName()
	if letters := err.GetSpecifiedShortnames(); letters != "" {
		return usagef("there is no flag -%s%s", printable(name), orMeant(dashed(near(letters, flagNames(cmd)))))
	}
	if meant := orMeant(dashed(near(name, flagNames(cmd)))); meant != "" {
		return usagef("%s has no flag --%s%s", cmd.Name(), printable(name), meant)
	}
	var others []string
	for _, c := range cmd.Root().Commands() {
		if c != cmd && !c.Hidden && c.Flags().Lookup(name) != nil {
			others = append(others, c.Name())
		}
	}
	switch {
	case cmd == cmd.Root() && len(others) > 0:
		return usagef("the desk has no flag --%s: flags of a command stand behind its name, as in quadrille %s --%s", name, others[0], name)
	case name == "data":
		return usagef("%s reads no club file: leave --data out", cmd.Name())
	}
	return usagef("%s has no flag --%s", cmd.Name(), printable(name))
}

// flagNames lists the flags of a command that a person may use, with their dashes.
func flagNames(cmd *cobra.Command) (names []string) {
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if !f.Hidden {
			names = append(names, f.Name)
		}
	})
	return names
}

// before adds a check of the flags to those that a command makes before it runs.
func before(cmd *cobra.Command, check func(cmd *cobra.Command) error) {
	earlier := cmd.PreRunE
	cmd.PreRunE = func(cmd *cobra.Command, args []string) error {
		if earlier != nil {
			if err := earlier(cmd, args); err != nil {
				return err
			}
		}
		return check(cmd)
	}
}

// needs makes a command wrong usage without all of these flags.
func needs(cmd *cobra.Command, names ...string) {
	before(cmd, func(cmd *cobra.Command) error {
		for _, name := range names {
			if !cmd.Flags().Changed(name) {
				return usagef("%s needs --%s, which takes %s", cmd.Name(), name, takenBy(cmd.Flags().Lookup(name)))
			}
		}
		return nil
	})
	for _, name := range names {
		mustFlag(cmd, name, cmd.MarkFlagRequired(name))
	}
}

// needsOne makes a command wrong usage without one of these flags, and with two of them.
func needsOne(cmd *cobra.Command, names ...string) {
	before(cmd, func(cmd *cobra.Command) error {
		if len(given(cmd, names)) == 0 {
			return usagef("%s needs %s", cmd.Name(), orList(dashed(names)))
		}
		return nil
	})
	excludes(cmd, names...)
	cmd.MarkFlagsOneRequired(names...)
}

// excludes makes a command wrong usage with more than one of these flags.
func excludes(cmd *cobra.Command, names ...string) {
	before(cmd, func(cmd *cobra.Command) error {
		if found := given(cmd, names); len(found) > 1 {
			return usagef("%s do not go together: choose one", strings.Join(dashed(found), " and "))
		}
		return nil
	})
	cmd.MarkFlagsMutuallyExclusive(names...)
}

// goesWith makes a flag wrong usage without another one.
func goesWith(cmd *cobra.Command, name, other string) {
	before(cmd, func(cmd *cobra.Command) error {
		if cmd.Flags().Changed(name) && !cmd.Flags().Changed(other) {
			return usagef("--%s goes with --%s", name, other)
		}
		return nil
	})
}

// oneFile makes the flag --data wrong usage beside a file that is named as an argument.
func oneFile(cmd *cobra.Command, args []string) error {
	if len(args) > 0 && cmd.Flags().Changed("data") {
		return usagef("%s reads one file: leave out --data or %s", cmd.Name(), quoted(args[0]))
	}
	return nil
}

// given lists those of some flags that stand on the command line.
func given(cmd *cobra.Command, names []string) (found []string) {
	for _, name := range names {
		if cmd.Flags().Changed(name) {
			found = append(found, name)
		}
	}
	return found
}

func dashed(names []string) []string {
	out := make([]string, len(names))
	for i, name := range names {
		out[i] = "--" + name
	}
	return out
}

// mustFlag stops a program that speaks of a flag which it has not.
func mustFlag(cmd *cobra.Command, name string, err error) {
	if err != nil {
		panic(fmt.Sprintf("flag --%s of %s: %v", name, cmd.Name(), err))
	}
}
