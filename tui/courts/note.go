package courts

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// noteForm asks what is particular about a court.
func noteForm(court session.Court) ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		return ui.Do{Command: session.NoteCourt{Court: court.ID, Note: v[0]}}, nil
	}
	return dialog.NewForm(fmt.Sprintf("Court %s: what is particular about it?", court.ID), send,
		dialog.Field{Label: "Note", Value: court.Note, Hint: "such as slow, or uneven at the net: it is read out with the call; empty for nothing"})
}
