package door

import (
	"fmt"
	"strings"
	"time"

	"club/quadrille/session"
	"club/quadrille/session/roster"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// importForm asks for the file of a roster.
func importForm() ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		path := strings.TrimSpace(v[0])
		if path == "" {
			return nil, fmt.Errorf("type the path of a CSV file, such as people.csv")
		}
		return ui.Import{Path: path, Arrived: v[1] == "here"}, nil
	}
	return dialog.NewForm("Open a roster", send,
		dialog.Field{Label: "File", Hint: "CSV with a header: name,group,level,arrive,leave,partner_with,keep_apart"},
		dialog.Field{Label: "Everybody is", Value: "expected", Options: []string{"expected", "here"}, Hint: "expected: check them in one by one; here: all at once, but those who come later"},
	)
}

// timesForm sets when somebody comes or goes.
func timesForm(c ui.Context, r row) ui.Dialog {
	show := func(t time.Time) string {
		if t.IsZero() {
			return ""
		}
		return t.In(c.Now.Location()).Format("15:04")
	}
	read := func(text string, was time.Time) (time.Time, error) {
		if text = strings.TrimSpace(text); text == show(was) {
			return was, nil
		}
		return clock(text, c.Night(), c.Now)
	}
	send := func(v []string) (ui.Intent, error) {
		e := session.Expect{Person: r.person.ID}
		var err error
		if e.Due, err = read(v[0], r.att.Due); err != nil {
			return nil, err
		}
		if e.Leaves, err = read(v[1], r.att.Leaves); err != nil {
			return nil, err
		}
		return ui.Do{Command: e}, nil
	}
	return dialog.NewForm(r.person.Name+": times tonight", send,
		dialog.Field{Label: "Comes at", Value: show(r.att.Due), Hint: "a time such as 19:40; empty if not known"},
		dialog.Field{Label: "Leaves at", Value: show(r.att.Leaves), Hint: "a time such as 21:00; empty to stay to the end"},
	)
}

// clock reads a time of a night.
func clock(text string, n *session.Night, now time.Time) (time.Time, error) {
	m, err := roster.ParseMoment(strings.TrimSpace(text))
	if err == nil && !m.IsZero() && !m.IsClock {
		err = fmt.Errorf("write a time of day such as 19:40")
	}
	return n.TimeOfDay(m, now), err
}
