package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/session/roster"
)

// asked is the value of a flag that knows which values it takes. One that it does not take is refused
// in its own words: no text of a library reaches a person.
type asked[T any] struct {
	value *T
	takes string                  // which values, to follow "takes": "a whole number from 1 to 9"
	read  func(string) (T, error) // of which only that there is an error matters
	kind  string                  // what the help shows for the value
}

// String is the value in the words of the flag.
func (a asked[T]) String() string {
	if a.value == nil {
		return ""
	}
	return strings.ToLower(fmt.Sprint(*a.value))
}

// Set reads a value.
func (a asked[T]) Set(text string) error {
	v, err := a.read(text)
	if err == nil {
		*a.value = v
	}
	return err
}

// Type is what the help shows for the value.
func (a asked[T]) Type() string { return a.kind }

// Takes says which values the flag takes.
func (a asked[T]) Takes() string { return a.takes }

// addChoice adds a flag whose value is one of a few words, read by the parser of their type. The
// shell completes them.
func addChoice[T any](cmd *cobra.Command, value *T, name, what string, parse func(string) (T, error), words ...string) {
	cmd.Flags().Var(asked[T]{value, orList(words), parse, strings.Join(words, "|")}, name, what)
	completes(cmd, name, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
}

// addWhole adds a flag for a whole number between two bounds. The value that it has before is the
// usual one, which may lie outside of them: 0 where nothing is chosen.
func addWhole(cmd *cobra.Command, value *int, name string, least, most int, what string) {
	read := func(text string) (int, error) {
		n, err := strconv.Atoi(text)
		if err != nil || n < least || n > most {
			return 0, errOutside
		}
		return n, nil
	}
	cmd.Flags().Var(asked[int]{value, fmt.Sprintf("a whole number from %d to %d", least, most), read, "number"}, name, what)
	completes(cmd, name, cobra.NoFileCompletions)
}

// errOutside is told in the words of the flag.
var errOutside = fmt.Errorf("not one of the values that it takes")

// addSeed adds the flag that makes what is drawn by lot repeatable.
func addSeed(cmd *cobra.Command, value *uint64, what string) {
	read := func(text string) (uint64, error) { return strconv.ParseUint(text, 10, 64) }
	takes := fmt.Sprintf("a whole number from 0 to %d", uint64(math.MaxUint64))
	cmd.Flags().Var(asked[uint64]{value, takes, read, "number"}, "seed", what)
	completes(cmd, "seed", cobra.NoFileCompletions)
}

// addShare adds a flag for any number between two bounds.
func addShare(cmd *cobra.Command, value *float64, name string, least, most float64, what string) {
	read := func(text string) (float64, error) {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || !(v >= least && v <= most) {
			return 0, errOutside
		}
		return v, nil
	}
	cmd.Flags().Var(asked[float64]{value, fmt.Sprintf("a number from %v to %v", least, most), read, "number"}, name, what)
	completes(cmd, name, cobra.NoFileCompletions)
}

// addText adds a flag for a text that is not empty: an empty one is what a script gives whose
// variable is not set.
func addText(cmd *cobra.Command, value *string, name, takes, what string) {
	read := func(text string) (string, error) {
		if strings.TrimSpace(text) == "" {
			return "", errOutside
		}
		return text, nil
	}
	cmd.Flags().Var(textValue{asked[string]{value, takes, read, "text"}}, name, what)
}

// textValue keeps the case of its text.
type textValue struct{ asked[string] }

// String is the text as it was given.
func (v textValue) String() string {
	if v.value == nil {
		return ""
	}
	return *v.value
}

// addFile adds a flag for the name of a file of some kinds, which the shell completes.
func addFile(cmd *cobra.Command, value *string, name, what string, kinds ...string) {
	addText(cmd, value, name, "the name of a file", what)
	completes(cmd, name, filesOf(kinds...))
}

// addClock adds a flag for a time of day.
func addClock(cmd *cobra.Command, value *string, name, what string) {
	read := func(text string) (string, error) {
		if m, err := roster.ParseMoment(text); err != nil || !m.IsClock {
			return "", errOutside
		}
		return text, nil
	}
	cmd.Flags().Var(asked[string]{value, "a time of day such as 19:00", read, "time"}, name, what)
	completes(cmd, name, cobra.NoFileCompletions)
}

// orList is a list in words: a, b or c.
func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}
