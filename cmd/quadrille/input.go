package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"club/quadrille/session/roster"
)

// openInput opens a file that is to be read, or the standard input for "-".
func openInput(cmd *cobra.Command, path string) (io.ReadCloser, error) {
	if path == "-" {
		return io.NopCloser(worded{cmd.InOrStdin()}), nil
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

// worded is an input whose errors are in words.
type worded struct{ io.Reader }

// Read implements io.Reader.
func (w worded) Read(text []byte) (int, error) {
	n, err := w.Reader.Read(text)
	if err != nil && !errors.Is(err, io.EOF) {
		err = fmt.Errorf("the standard input cannot be read: %s", because(err))
	}
	return n, err
}

// readRoster reads a roster from a file or the standard input.
func readRoster(cmd *cobra.Command, path string) ([]roster.Entry, error) {
	in, err := openInput(cmd, path)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	return parseRoster(cmd, in)
}

// parseRoster reads a roster and says how it was read.
func parseRoster(cmd *cobra.Command, in io.Reader) ([]roster.Entry, error) {
	read, err := roster.Read(in)
	if err != nil {
		return nil, err
	}
	for _, text := range read.Notes {
		note(cmd, "roster: %s", text)
	}
	return read.Entries, nil
}

// counted is a number with its noun.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
