package tui

import (
	"bytes"
	"errors"

	"club/quadrille/session/roster"
)

// readRoster reads and parses a roster with the reader that the desk was given.
func readRoster(read func(string) ([]byte, error), path string) ([]roster.Entry, error) {
	if read == nil {
		return nil, errors.New("this desk cannot read files")
	}
	data, err := read(path)
	if err != nil {
		return nil, err
	}
	return roster.Parse(bytes.NewReader(data))
}
