package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/session"
)

// completes says what the shell offers for a flag.
func completes(cmd *cobra.Command, name string, offer cobra.CompletionFunc) {
	mustFlag(cmd, name, cmd.RegisterFlagCompletionFunc(name, offer))
}

// filesOf offers the files whose names end in one of some ways, and all files without one.
func filesOf(kinds ...string) cobra.CompletionFunc {
	return func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
		if len(kinds) == 0 {
			return nil, cobra.ShellCompDirectiveDefault
		}
		return kinds, cobra.ShellCompDirectiveFilterFileExt
	}
}

// first offers something for the first word behind a command, and nothing behind it.
func first(offer cobra.CompletionFunc) cobra.CompletionFunc {
	return func(cmd *cobra.Command, args []string, begun string) ([]cobra.Completion, cobra.ShellCompDirective) {
		if len(args) > 0 {
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
		return offer(cmd, args, begun)
	}
}

// names offers the people of the club.
func (o *options) names(_ *cobra.Command, _ []string, begun string) ([]cobra.Completion, cobra.ShellCompDirective) {
	return o.offer(func(club *session.Club) (words []string) {
		for _, p := range club.People {
			if strings.HasPrefix(strings.ToLower(p.Name), strings.ToLower(begun)) {
				words = append(words, printable(p.Name))
			}
		}
		return words
	})
}

// nights offers the nights of the club, the newest first, each with its date and name.
func (o *options) nights(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
	return o.offer(func(club *session.Club) (words []string) {
		for i := len(club.Nights) - 1; i >= 0; i-- {
			n := club.Nights[i]
			words = append(words, cobra.CompletionWithDesc(fmt.Sprint(n.ID), strings.TrimSpace(date(n)+" "+printable(n.Name))))
		}
		return words
	})
}

// venues offers the venues of the club.
func (o *options) venues(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
	return o.offer(func(club *session.Club) (words []string) {
		for _, name := range club.VenueNames() {
			words = append(words, printable(name))
		}
		return words
	})
}

// offer reads the club file for the shell. A file that cannot be read offers nothing: somebody who
// presses tab wants no sentence.
func (o *options) offer(of func(*session.Club) []string) ([]cobra.Completion, cobra.ShellCompDirective) {
	const directive = cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
	_, ledger, err := o.look()
	if err != nil {
		return nil, directive
	}
	return of(ledger.Club()), directive
}
