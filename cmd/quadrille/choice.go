package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// choice is a flag whose value is one of a few words, read by the parser of their type.
type choice[T any] struct {
	value *T
	parse func(string) (T, error)
	words []string
}

// addChoice adds such a flag to a command. The shell completes its words, of which the first are
// those that the help names.
func addChoice[T any](cmd *cobra.Command, value *T, name, what string, parse func(string) (T, error), words ...string) {
	cmd.Flags().Var(choice[T]{value, parse, words}, name, what)
	err := cmd.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
	if err != nil {
		panic(fmt.Sprintf("flag --%s of %s: %v", name, cmd.Name(), err))
	}
}

// String is the word of the value.
func (c choice[T]) String() string {
	if c.value == nil {
		return ""
	}
	return strings.ToLower(fmt.Sprint(*c.value))
}

// Set reads a word.
func (c choice[T]) Set(text string) error {
	v, err := c.parse(text)
	if err == nil {
		*c.value = v
	}
	return err
}

// Type names the words in the help.
func (c choice[T]) Type() string { return strings.Join(c.words, "|") }
