package courts

import (
	"fmt"
	"strconv"
	"strings"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// levelsForm asks for which levels a court is kept.
func levelsForm(court session.Court) ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		low, err := end(v[0])
		if err != nil {
			return nil, err
		}
		high, err := end(v[1])
		if err != nil {
			return nil, err
		}
		return ui.Do{Command: session.LevelCourt{Court: court.ID, Low: low, High: high}}, nil
	}
	return dialog.NewForm(fmt.Sprintf("Court %s: for which levels?", court.ID), send,
		dialog.Field{Label: "From", Value: endText(court.Low), Hint: "the lowest level that plays here as a rule, such as 3.5; empty for any"},
		dialog.Field{Label: "To", Value: endText(court.High), Hint: "the highest; who has another level plays here only where nothing else is as fair"})
}

// end is an end of the levels as somebody types it, 0 for none.
func end(text string) (float64, error) {
	text = strings.Replace(strings.TrimSpace(text), ",", ".", 1)
	if text == "" {
		return 0, nil
	}
	level, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, fmt.Errorf("%q is no level: write a number such as 3.5, or nothing", text)
	}
	return level, nil
}

func endText(level float64) string {
	if level == 0 {
		return ""
	}
	return strconv.FormatFloat(level, 'f', -1, 64)
}
