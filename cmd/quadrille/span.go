package main

import (
	"strings"
	"time"

	"github.com/spf13/cobra"

	"club/quadrille/scheduler"
	"club/quadrille/session"
)

// spanFlags are the flags that choose games of the club.
type spanFlags struct {
	session.Span
	format scheduler.Format
}

// spanNames are these flags by their names.
var spanNames = []string{"from", "until", "format", "level-from", "level-to"}

// add adds the flags to a command; when says with what they go together.
func (s *spanFlags) add(cmd *cobra.Command, when string) {
	addDay(cmd, &s.From, "from", when+"count the games of nights from this `day` on")
	addDay(cmd, &s.Until, "until", when+"count the games of nights until this `day`, with it")
	formats := []string{"rotating", "mixed", "pairs", "ladder"}
	cmd.Flags().Var(unset[scheduler.Format]{asked[scheduler.Format]{&s.format, orList(formats), scheduler.ParseFormat, strings.Join(formats, "|")}},
		"format", when+"count the games of one format only (default: of all)")
	completes(cmd, "format", cobra.FixedCompletions(formats, cobra.ShellCompDirectiveNoFileComp))
	const least, most = 0, 10
	addShare(cmd, &s.Low, "level-from", least, most, when+"count the games of people who all state this `level` or more")
	addShare(cmd, &s.High, "level-to", least, most, when+"count the games of people who all state this `level` or less")
	before(cmd, func(cmd *cobra.Command) error {
		if cmd.Flags().Changed("format") {
			s.Format = &s.format
		}
		if err := s.Validate(); err != nil {
			return usage{err}
		}
		return nil
	})
}

// addDay adds a flag for a day of the calendar.
func addDay(cmd *cobra.Command, value *time.Time, name, what string) {
	read := func(text string) (time.Time, error) { return time.ParseInLocation(time.DateOnly, text, time.Local) }
	cmd.Flags().Var(unset[time.Time]{asked[time.Time]{value, "a date such as 2026-01-08", read, "day"}}, name, what)
	completes(cmd, name, cobra.NoFileCompletions)
}

// unset is an asked value without a usual one.
type unset[T any] struct{ asked[T] }

// String is empty: nothing is usual.
func (unset[T]) String() string { return "" }
