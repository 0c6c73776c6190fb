package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"github.com/charmbracelet/x/ansi"
	"github.com/spf13/cobra"
)

// What every command keeps to when it writes:
//
//   - What was asked for goes to the standard output. With --json or --csv nothing else does.
//   - Everything said about it goes to the standard error, a sentence a line, after "quadrille: ".
//   - The exit code is 0 when all is well, 1 when something was refused or found wrong, and 2 when
//     the command line itself is wrong.
//   - Lines for people fit 80 columns, and carry no colour.

// The exit codes.
const (
	exitFine    = 0
	exitRefused = 1
	exitUsage   = 2
)

// columns is how wide lines for people may be.
const columns = 80

// refusal is an error of a command that was asked rightly: the answer is no.
type refusal struct{ error }

func (r refusal) Unwrap() error { return r.error }

// usage is an error in how a command was asked.
type usage struct{ error }

func (u usage) Unwrap() error { return u.error }

func usagef(format string, args ...any) error { return usage{fmt.Errorf(format, args...)} }

// run carries out one command line and gives its exit code.
func run(args []string, in io.Reader, out, errs io.Writer) int {
	line := watched(in, errs, args)
	root, answer := newRoot(), &outlet{Writer: out, line: line}
	line.telling(root)
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(answer)
	root.SetErr(clearing{errs, line})
	cmd, err := root.ExecuteContextC(context.Background())
	switch {
	case answer.failed != nil:
		fmt.Fprintf(errs, "quadrille: the standard output did not take the whole answer: %s\n", because(answer.failed))
		return exitRefused
	case err == nil:
		return exitFine
	}
	fmt.Fprintf(errs, "quadrille: %s\n", printable(err.Error()))
	var asked refusal
	var wrong usage
	if errors.As(err, &asked) && !errors.As(err, &wrong) {
		return exitRefused
	}
	fmt.Fprintf(errs, "quadrille: see %q\n", cmd.CommandPath()+" --help")
	return exitUsage
}

// refusing makes whatever the commands below c answer a refusal, so that it is told from an error
// in the command line, which cobra finds before a command runs.
func refusing(c *cobra.Command) {
	if do := c.RunE; do != nil {
		c.RunE = func(cmd *cobra.Command, args []string) error {
			if err := do(cmd, args); err != nil {
				return refusal{err}
			}
			return nil
		}
	}
	for _, sub := range c.Commands() {
		refusing(sub)
	}
}

// note says something beside the output.
func note(cmd *cobra.Command, format string, args ...any) {
	fmt.Fprintf(cmd.ErrOrStderr(), "quadrille: %s\n", printable(fmt.Sprintf(format, args...)))
}

// printJSON writes one JSON value and a line end.
func printJSON(w io.Writer, v any) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	return out.Encode(v)
}

// printable takes escape sequences and control characters out of text that may come from outside.
// Line ends stay.
func printable(text string) string {
	clean := []rune(ansi.Strip(text))
	kept := clean[:0]
	for _, r := range clean {
		if r == '\n' || r >= ' ' && r != 0x7f && (r < 0x80 || r >= 0xa0) {
			kept = append(kept, r)
		}
	}
	return string(kept)
}
