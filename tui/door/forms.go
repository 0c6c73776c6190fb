package door

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"club/quadrille/session"
	"club/quadrille/session/roster"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// ImportForm asks for the file of a roster.
func ImportForm() ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		path := strings.TrimSpace(v[0])
		if path == "" {
			return nil, fmt.Errorf("type the path of a CSV file, such as people.csv")
		}
		return ui.Import{Path: path, Arrived: v[1] == "here"}, nil
	}
	return dialog.NewForm("Open a roster", send,
		dialog.Field{Label: "File", Hint: "CSV with a header: name,group,level,arrive,leave,partner_with,keep_apart,not_partner"},
		dialog.Field{Label: "Everybody is", Value: "expected", Options: []string{"expected", "here"}, Hint: "expected: check them in one by one; here: all at once, but those who come later"},
	)
}

// TimesForm sets when somebody comes or goes.
func TimesForm(c ui.Context, p session.Person) ui.Dialog {
	var was session.Stay
	if a := c.Night().Attending(p.ID); a != nil {
		was = a.Stay
	}
	shownDue, shownLeaves := shownMoment(was.Due, was.From, c.Now), shownMoment(was.Leaves, was.Last, c.Now)
	send := func(v []string) (ui.Intent, error) {
		stay := was
		if text := strings.TrimSpace(v[0]); text != shownDue { // what is left as it was is not read anew
			m, err := moment(text, c.Night())
			if err != nil {
				return nil, err
			}
			stay = stay.Arriving(m, c.Night(), c.Now)
		}
		if text := strings.TrimSpace(v[1]); text != shownLeaves {
			m, err := moment(text, c.Night())
			if err != nil {
				return nil, err
			}
			stay = stay.Leaving(m, c.Night(), c.Now)
		}
		return ui.Do{Command: session.Expect{
			Person: p.ID, Due: stay.Due, Leaves: stay.Leaves, From: stay.From, Last: stay.Last,
		}}, nil
	}
	comes, leaves := "a time such as 19:40; empty if not known", "a time such as 21:00; empty to stay to the end"
	if c.Night().Settings.Flow == session.Rounds {
		comes = "a time such as 19:40, or the first round such as 3; empty if not known"
		leaves = "a time such as 21:00, or the last round such as 5; empty to stay to the end"
	}
	return dialog.NewForm(p.Name+": times tonight", send,
		dialog.Field{Label: "Comes at", Value: shownDue, Hint: comes},
		dialog.Field{Label: "Leaves at", Value: shownLeaves, Hint: leaves},
	)
}

// shownMoment is a time of day or a round as it is typed, empty for neither.
func shownMoment(t time.Time, round int, now time.Time) string {
	switch {
	case round > 0:
		return strconv.Itoa(round)
	case t.IsZero():
		return ""
	}
	return t.In(now.Location()).Format("15:04")
}

// moment reads a time of day, or in rounds the number of a round.
func moment(text string, n *session.Night) (roster.Moment, error) {
	m, err := roster.ParseMoment(text)
	if err == nil && m.Round > 0 && n.Settings.Flow != session.Rounds {
		err = fmt.Errorf("tonight is rolling and has no rounds: write a time of day such as 19:40")
	}
	return m, err
}
