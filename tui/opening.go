package tui

import (
	"slices"
	"strconv"

	"club/quadrille/session"
	"club/quadrille/session/care"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// opening opens tonight: by one enter where the club has usual nights, else by a form that one enter takes as it is.
func (m *Model) opening() ui.Dialog {
	offered := m.ledger.Club().NightsOffered(m.now)
	if len(offered) == 0 {
		return openForm(m, m.proposed())
	}
	var items []dialog.Item
	for i, u := range offered {
		items = append(items, dialog.Item{Key: strconv.Itoa(i + 1), Label: u.Called() + ": " + u.Words(), Intent: m.opens(u.Opening(m.now, m.seed()))})
	}
	items = append(items,
		dialog.Item{Key: "e", Label: "change something before it opens", Intent: ui.Show{Dialog: m.changing(offered)}},
		dialog.Item{Key: "o", Label: "another night, as the last one was", Intent: ui.Show{Dialog: openForm(m, m.proposed())}},
		dialog.Item{Key: "x", Label: "forget one of these nights", Intent: ui.Show{Dialog: forgetting(offered)}},
	)
	return dialog.NewMenu("Open tonight", items...).Noting(m.caution()).Marking(0)
}

// caution is what is usual before play, nothing where nobody wants to be reminded.
func (m *Model) caution() string {
	if m.ledger.Club().NoReminders {
		return ""
	}
	return care.BeforePlay
}

// opens opens a night and goes to the door.
func (m *Model) opens(night session.OpenNight) ui.Intent {
	return ui.Do{Command: night, After: func(*session.Ledger) { m.goTo(ui.Door) }}
}

// changing asks which of the usual nights is the form to begin with.
func (m *Model) changing(offered []session.UsualNight) ui.Dialog {
	if len(offered) == 1 {
		return openForm(m, offered[0].Opening(m.now, m.seed()))
	}
	var items []dialog.Item
	for i, u := range offered {
		items = append(items, dialog.Item{Key: strconv.Itoa(i + 1), Label: u.Name, Intent: ui.Show{Dialog: openForm(m, u.Opening(m.now, m.seed()))}})
	}
	return dialog.NewMenu("Change which night before it opens?", items...).Marking(0)
}

// forgetting asks which of the usual nights the club does not have any more.
func forgetting(offered []session.UsualNight) ui.Dialog {
	var items []dialog.Item
	for i, u := range offered {
		items = append(items, dialog.Item{Key: strconv.Itoa(i + 1), Label: u.Name, Intent: ui.Do{Command: session.DropUsualNight{Name: u.Name}}})
	}
	return dialog.NewMenu("Forget which usual night? What was played stays.", items...)
}

// proposed is a night as the last one was.
func (m *Model) proposed() session.OpenNight {
	s, courts := m.ledger.Club().Proposal(m.seed())
	return session.OpenNight{Name: m.now.Format("Monday 2 January"), Settings: s, Courts: courts, Venue: m.ledger.Venue()}
}

// openForm asks what a new night needs, with what it would be filled in.
func openForm(m *Model, night session.OpenNight) ui.Dialog {
	club, s := m.ledger.Club(), night.Settings
	first := []dialog.Field{
		{Label: "Night", Value: night.Name, Hint: "enter takes the form as it is"},
		{Label: "Courts", Value: session.CourtsText(club.CourtsAt(night.Venue, night.Courts)), Hint: "how many there are, or their names such as 1, 2, Centre; more can be added at any time"},
	}
	settings := settingsFields(s, m.now)
	venue := dialog.Field{Label: "Venue", Value: night.Venue, Hint: "where you play: it has its own courts and emergency card; empty for a club with one venue"}
	at := len(first) + len(settings) // of the venue: behind all, as long as the club plays in one place
	if len(club.VenueNames()) > 0 {
		at = len(first)
	}
	send := func(v []string) (ui.Intent, error) {
		where := v[at]
		v = slices.Delete(v, at, at+1)
		next, err := readSettings(s, v[len(first):], nil, m.now)
		if err != nil {
			return nil, err
		}
		count, named, err := session.ParseCourts(v[1])
		if err != nil {
			return nil, err
		}
		return m.opens(session.OpenNight{Name: v[0], Settings: next, Courts: count, Named: named, Venue: where}), nil
	}
	fields := slices.Insert(append(first, settings...), at, venue)
	return dialog.NewForm("Open tonight", send, fields...).Noting(m.caution())
}

// usualNightForm keeps tonight as a usual night.
func (m *Model) usualNightForm() ui.Dialog {
	day := m.ledger.Night().Opened.In(m.now.Location()).Weekday().String()
	send := func(v []string) (ui.Intent, error) {
		day, err := session.ParseDay(v[1])
		if err != nil {
			return nil, err
		}
		return ui.Do{Command: session.KeepUsualNight{Name: v[0], Day: day, Zone: m.now.Location()}}, nil
	}
	return dialog.NewForm("Keep tonight as a usual night", send,
		dialog.Field{Label: "Name", Value: day + " doubles", Hint: "a name that a usual night has already takes its place"},
		dialog.Field{Label: "Day", Value: day, Hint: "of the week: that night is offered first; empty for any day"},
	).Noting("Settings, venue, courts with their notes and levels, and closing time are kept as they are tonight; one enter opens the next such night.")
}
