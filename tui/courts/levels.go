package courts

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// levelsForm asks for which levels a court is kept.
func levelsForm(court session.Court) ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		low, err := session.ParseLevel(v[0])
		if err != nil {
			return nil, err
		}
		high, err := session.ParseLevel(v[1])
		if err != nil {
			return nil, err
		}
		return ui.Do{Command: session.LevelCourt{Court: court.ID, Low: low, High: high}}, nil
	}
	return dialog.NewForm(fmt.Sprintf("Court %s: for which levels?", court.ID), send,
		dialog.Field{Label: "From", Value: session.LevelText(court.Low), Hint: "the lowest level that plays here as a rule, such as 3.5; empty for any"},
		dialog.Field{Label: "To", Value: session.LevelText(court.High), Hint: "the highest; who has another level plays here only where nothing else is as fair"})
}
