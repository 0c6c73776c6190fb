package main

import (
	"fmt"
	"io"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/session/summary"
)

// newSummary builds the command that tells a night in short.
func newSummary(opts *options) *cobra.Command {
	var night string
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "summary",
		Short: "Tell a night in short",
		Long: `Tells a night of the club in short: games, people, the use of the courts, who leads, how
fair it was, the longest wait, the closest game and who met most often. It works while the
desk is open.`,
		Example: `  quadrille summary
  quadrille summary --night 2026-01-08 --json`,
		Args: nothing,
	}
	dataFlag(cmd, opts, clubFile)
	nightFlag(cmd, opts, &night, "the newest")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print the summary as JSON")
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		if err := mustNameNight(night); err != nil {
			return err
		}
		s, err := opts.summaryOf(night)
		switch {
		case err != nil:
			return err
		case asJSON:
			return printJSON(cmd.OutOrStdout(), s)
		}
		return printSummary(cmd.OutOrStdout(), s)
	}
	return cmd
}

// summaryOf is the summary of a night, as it was when it ended.
func (o *options) summaryOf(night string) (summary.Summary, error) {
	view, ledger, err := o.look()
	if err != nil {
		return summary.Summary{}, err
	}
	n, err := nightOf(ledger.Club(), night)
	if err != nil {
		return summary.Summary{}, err
	}
	if n != ledger.Club().Night() {
		if ledger, err = session.Past(view.Records(1), n.ID); err != nil {
			return summary.Summary{}, err
		}
	}
	s, _ := summary.Of(ledger, time.Now())
	return s, nil
}

// printSummary writes a summary for people.
func printSummary(w io.Writer, s summary.Summary) error {
	var out strings.Builder
	fmt.Fprintf(&out, "Night %d: %s\n", s.Night, s.Name)
	for _, part := range s.Words(time.Local) {
		fmt.Fprintf(&out, "\n%s\n", part.Title)
		for _, text := range part.Lines {
			fmt.Fprintf(&out, "  %s\n", wrap(text, 4))
		}
	}
	_, err := io.WriteString(w, out.String())
	return err
}
