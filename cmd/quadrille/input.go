package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/session/roster"
)

// openInput opens a file that is to be read, or the standard input for "-".
func openInput(cmd *cobra.Command, path string) (io.ReadCloser, error) {
	if path == "-" {
		return io.NopCloser(cmd.InOrStdin()), nil
	}
	f, err := os.Open(path)
	if os.IsNotExist(err) {
		return nil, fmt.Errorf("there is no file %s", path)
	}
	return f, err
}

// readRoster reads a roster from a file or the standard input.
func readRoster(cmd *cobra.Command, path string) ([]roster.Entry, error) {
	in, err := openInput(cmd, path)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	return roster.Parse(in)
}

// requireFlags makes a command wrong usage without any of these flags.
func requireFlags(cmd *cobra.Command, names ...string) {
	for _, name := range names {
		if err := cmd.MarkFlagRequired(name); err != nil {
			panic(fmt.Sprintf("command %s requires a flag that it has not: %v", cmd.Name(), err))
		}
	}
}

// counted is a number with its noun.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// listed joins words with commas and an "and".
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
