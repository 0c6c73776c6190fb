package table

import (
	"fmt"
	"strings"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// allFormats is the choice of games under any format.
const allFormats = "all"

// which asks of which nights and games the league and the partners are.
func (t *Table) which(c ui.Context) ui.Action {
	return ui.Act(ui.Bind("which nights", "w", "w"), func() ui.Intent { return ui.Show{Dialog: t.whichForm(c.Now.Location())} }).
		Explained("count only nights between two days, one format, or people of some levels; now " + t.span.Words())
}

// whichForm asks for days in the zone of the hall.
func (t *Table) whichForm(zone *time.Location) ui.Dialog {
	format := allFormats
	if t.span.Format != nil {
		format = t.span.Format.Words()
	}
	send := func(v []string) (ui.Intent, error) {
		next, err := readSpan(v, zone)
		if err != nil {
			return nil, err
		}
		return ui.Close{Then: ui.Later{Make: func() ui.Intent {
			t.span, t.cursor = next, 0
			return ui.Survey{}
		}}}, nil
	}
	return dialog.NewForm("Which nights and games?", send,
		dialog.Field{Label: "From", Value: dayText(t.span.From), Hint: "the first day, such as 2026-01-08; empty for the first night of the club"},
		dialog.Field{Label: "Until", Value: dayText(t.span.Until), Hint: "the last day; empty for the newest night"},
		dialog.Field{Label: "Format", Value: format, Options: []string{allFormats, "rotating", "mixed", "set pairs", "ladder"}, Hint: "games that were called so"},
		dialog.Field{Label: "Level from", Value: session.LevelText(t.span.Low), Hint: "games among people who all state this level or more; empty for any"},
		dialog.Field{Label: "Level to", Value: session.LevelText(t.span.High), Hint: "and this level or less; empty for any"},
	)
}

func dayText(day time.Time) string {
	if day.IsZero() {
		return ""
	}
	return day.Format(time.DateOnly)
}

// readSpan reads what was typed, days in the zone of the hall.
func readSpan(v []string, zone *time.Location) (s session.Span, err error) {
	day := func(text, what string) (time.Time, error) {
		if text = strings.TrimSpace(text); text == "" {
			return time.Time{}, nil
		}
		at, err := time.ParseInLocation(time.DateOnly, text, zone)
		if err != nil {
			return at, fmt.Errorf("%s: %q is no day: write it as 2026-01-08", what, text)
		}
		return at, nil
	}
	if s.From, err = day(v[0], "from"); err != nil {
		return s, err
	}
	if s.Until, err = day(v[1], "until"); err != nil {
		return s, err
	}
	if v[2] != allFormats {
		format, err := scheduler.ParseFormat(v[2])
		if err != nil {
			return s, err
		}
		s.Format = &format
	}
	if s.Low, err = session.ParseLevel(v[3]); err != nil {
		return s, err
	}
	if s.High, err = session.ParseLevel(v[4]); err != nil {
		return s, err
	}
	return s, s.Validate()
}
