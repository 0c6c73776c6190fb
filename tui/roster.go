package tui

import (
	"bytes"
	"errors"

	"club/quadrille/session/roster"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// readRoster reads and parses a roster with the reader that the desk was given.
func readRoster(read func(string) ([]byte, error), path string) (roster.Roster, error) {
	if read == nil {
		return roster.Roster{}, errors.New("this desk cannot read files")
	}
	data, err := read(path)
	if err != nil {
		return roster.Roster{}, err
	}
	return roster.Read(bytes.NewReader(data))
}

// readingOf is a page that says how a roster was read, where that is not beyond doubt.
func readingOf(notes []string) ui.Dialog {
	return dialog.NewPage("How the roster was read", func(c ui.Context) []string {
		var out []string
		for _, text := range notes {
			out = append(out, line.Wrap(text, c.Width)...)
		}
		return append(out, "", "Is something wrong? Undo it, mend the file and open it again.")
	})
}
