package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"club/quadrille/session"
	"club/quadrille/session/roster"
)

// openInput opens a file that is to be read, or the standard input for "-".
func openInput(cmd *cobra.Command, path string) (io.ReadCloser, error) {
	if path == "-" {
		return io.NopCloser(cmd.InOrStdin()), nil
	}
	f, err := os.Open(path)
	switch {
	case os.IsNotExist(err):
		return nil, fmt.Errorf("there is no file %s", path)
	case err != nil:
		return nil, fmt.Errorf("%s cannot be read: %s", path, because(err))
	}
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, errors.Join(fmt.Errorf("%s is a folder: name a file in it", path), f.Close())
	}
	return f, nil
}

// readRoster reads a roster from a file or the standard input.
func readRoster(cmd *cobra.Command, path string) ([]roster.Entry, error) {
	in, err := openInput(cmd, path)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	return parseRoster(in)
}

// parseRoster reads a roster and makes its names fit for a screen.
func parseRoster(in io.Reader) ([]roster.Entry, error) {
	entries, err := roster.Parse(in)
	if err != nil {
		return nil, err
	}
	lines := map[string]int{}
	for i := range entries {
		e := &entries[i]
		if e.Name, err = session.CleanName(e.Name); err != nil {
			return nil, fmt.Errorf("roster line %d: %w", e.Line, err)
		}
		if first, twice := lines[strings.ToLower(e.Name)]; twice {
			return nil, fmt.Errorf("roster line %d: %s stands on line %d already: add a second name to tell them apart", e.Line, e.Name, first)
		}
		lines[strings.ToLower(e.Name)] = e.Line
		e.Group = session.CleanText(e.Group, session.MaxName)
		for j := range e.PartnerWith {
			e.PartnerWith[j].Name = session.CleanText(e.PartnerWith[j].Name, session.MaxName)
		}
		for j := range e.KeepApart {
			e.KeepApart[j] = session.CleanText(e.KeepApart[j], session.MaxName)
		}
	}
	return entries, nil
}

// counted is a number with its noun.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
