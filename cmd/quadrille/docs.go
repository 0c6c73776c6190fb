package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// newDocs builds the command that writes the manual, for those who make a package of the program.
func newDocs() *cobra.Command {
	return &cobra.Command{
		Use:     "docs FOLDER",
		Short:   "Write the manual pages into a folder",
		Long:    "Writes a manual page for every command into a folder that is there, quadrille.1 and so on.",
		Example: "  quadrille docs /usr/local/share/man/man1",
		Args:    takes(1, 1, "one FOLDER"),
		Hidden:  true,
		RunE: func(cmd *cobra.Command, args []string) error {
			if info, err := os.Stat(args[0]); err != nil || !info.IsDir() {
				return fmt.Errorf("there is no folder %s: make it first", args[0])
			}
			root := newRoot()
			for _, c := range append(root.Commands(), root) {
				if c.Hidden {
					continue
				}
				name := filepath.Join(args[0], manName(c)+".1")
				if err := os.WriteFile(name, []byte(manual(c)), 0o644); err != nil {
					return notWritten(name, err)
				}
			}
			return nil
		},
	}
}

// manName is the name of a command's page.
func manName(c *cobra.Command) string { return strings.ReplaceAll(c.CommandPath(), " ", "-") }

// manual is the page of a command in the macros that every system's man knows. It has no date: equal
// programs write equal pages.
func manual(c *cobra.Command) string {
	var out strings.Builder
	head := func(title string) { fmt.Fprintf(&out, ".SH %s\n", title) }
	fmt.Fprintf(&out, ".TH %s 1 \"\" Quadrille\n.nh\n.ad l\n", strings.ToUpper(manName(c)))
	head("NAME")
	fmt.Fprintf(&out, "%s \\- %s\n", roff(manName(c)), roff(c.Short))
	head("SYNOPSIS")
	fmt.Fprintf(&out, ".B %s\n", roff(c.UseLine()))
	if !c.HasParent() {
		out.WriteString(".br\n.B quadrille COMMAND [flags]\n")
	}
	head("DESCRIPTION")
	for i, paragraph := range strings.Split(c.Long, "\n\n") {
		if i > 0 {
			out.WriteString(".PP\n")
		}
		out.WriteString(roff(paragraph) + "\n")
	}
	head("OPTIONS")
	c.Flags().VisitAll(func(f *pflag.Flag) { manFlag(&out, f) })
	if !c.HasParent() {
		head("COMMANDS")
		for _, sub := range c.Commands() {
			if !sub.Hidden {
				fmt.Fprintf(&out, ".TP\n.B %s\n%s\n", roff(sub.Name()), roff(sub.Short))
			}
		}
		head("ENVIRONMENT AND EXIT CODES")
		out.WriteString(asIs(surroundings))
	}
	head("EXAMPLES")
	out.WriteString(asIs(c.Example))
	if c.Name() == "help" {
		head("FILES AND JSON")
		out.WriteString(asIs(formats()))
	}
	if c.HasParent() {
		head("SEE ALSO")
		out.WriteString(".BR quadrille (1)\n")
	}
	return out.String()
}

// manFlag writes one option.
func manFlag(out io.Writer, f *pflag.Flag) {
	if f.Hidden {
		return
	}
	value, what := pflag.UnquoteUsage(f)
	name := "--" + f.Name
	if f.Shorthand != "" {
		name = "-" + f.Shorthand + ", " + name
	}
	if value != "" {
		name += " " + value
	}
	if d := f.DefValue; d != "" && d != "0" && d != "false" {
		what += " (default " + d + ")"
	}
	fmt.Fprintf(out, ".TP\n.B %s\n%s\n", roff(name), roff(what))
}

// asIs keeps lines as they are.
func asIs(text string) string { return ".nf\n" + roff(strings.TrimRight(text, "\n")) + "\n.fi\n" }

// roff takes from text what a manual page would take for a command of its own.
func roff(text string) string {
	lines := strings.Split(strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`).Replace(text), "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, ".") {
			lines[i] = `\&` + line
		}
	}
	return strings.Join(lines, "\n")
}
