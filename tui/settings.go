package tui

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// settings offers what concerns the whole night.
func (m *Model) settings() tea.Cmd {
	if m.ledger.Night() == nil {
		return m.show(m.beforeMenu())
	}
	return m.show(m.nightMenu())
}

// nightMenu has the choices about the night that goes on.
func (m *Model) nightMenu() *dialog.Menu {
	noFile := ""
	if m.options.Backup == nil {
		noFile = "nothing of this is kept"
	}
	n := m.ledger.Night()
	notRolling := ""
	if !n.Rolls {
		notRolling = "no court calls by itself"
	}
	note, usual := "", "all is as usual"
	if unusual := m.ledger.Club().Unusual(); len(unusual) > 0 {
		note, usual = "For tonight only: "+strings.Join(unusual, "; ")+".", ""
	}
	return dialog.NewMenu("Tonight",
		dialog.Item{Key: "e", Label: "change flow, format, scoring, rounds, times", Intent: ui.Show{Dialog: settingsForm(m, "")}},
		dialog.Item{Key: "k", Label: "keep tonight's settings and courts as usual", Intent: ui.Do{Command: session.KeepUsual{}}, Why: usual},
		dialog.Item{Key: "u", Label: "keep tonight as a usual night: one enter opens the next", Intent: ui.Show{Dialog: m.usualNightForm()}},
		dialog.Item{Key: "n", Label: "names in the hall: now " + m.ledger.Club().Naming.String(), Intent: ui.Show{Dialog: m.namingMenu()}},
		m.phonesItem(),
		m.courtScoresItem(),
		dialog.Item{Key: "r", Label: "reminders when a night is opened: now " + onOff(!m.ledger.Club().NoReminders), Intent: ui.Do{
			Command: session.ChooseReminders{Off: !m.ledger.Club().NoReminders},
		}},
		dialog.Item{Key: "h", Label: "heat: how hot it feels, and what to do", Intent: ui.Own{Do: m.heat}},
		m.fitItem(),
		dialog.Item{Key: "+", Label: "add one more court", Intent: ui.Do{Command: session.OpenCourt{}}},
		dialog.Item{Key: "w", Label: "write a backup of the club file", Intent: ui.Show{Dialog: backupForm()}, Why: noFile},
		dialog.Item{Key: "l", Label: "last games: call nobody more", Intent: ui.Do{Command: session.EndCalls{}}, Why: notRolling},
		m.endItem(),
	).Noting(note)
}

func onOff(on bool) string {
	if on {
		return "on"
	}
	return "off"
}

// settingsForm changes the settings of the night that goes on. It begins at a field, at the first where there is none of that label.
func settingsForm(m *Model, at string) ui.Dialog {
	s := m.ledger.Night().Settings
	fields := settingsFields(s, m.now)
	way := showWay(fields, m.ledger.Night())
	send := func(v []string) (ui.Intent, error) {
		n := m.ledger.Night()
		v, err := way.settle(v)
		if err != nil {
			return nil, err
		}
		next, err := readSettings(s, v, n, m.now)
		if err != nil {
			return nil, err
		}
		if next.Closing.Equal(s.Closing) {
			next.Closing = n.Settings.Closing // which the clock may have carried along meanwhile
		}
		return ui.Do{Command: session.ChangeSettings{Settings: next}}, nil
	}
	if u := m.ledger.Club().Usual; u != nil {
		sayUsual(fields, settingsFields(u.Settings, m.now))
	}
	return dialog.NewForm("Change tonight, from the next call on", send, fields...).At(at)
}

// sayUsual tells what is usual where a field has something else. A closing time is of one night.
func sayUsual(fields, usual []dialog.Field) {
	for i := range fields {
		if f := &fields[i]; f.Value != usual[i].Value && f.Label != closingLabel {
			f.Hint = "usually " + cmp.Or(usual[i].Value, "none") + "; " + f.Hint
		}
	}
}

func (m *Model) seed() uint64 {
	if m.options.NewSeed == nil {
		return 1
	}
	return m.options.NewSeed()
}

func number(text, what string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil {
		return 0, fmt.Errorf("%s: %q is no whole number", what, text)
	}
	return n, nil
}

// backupForm asks where a copy of the club file goes.
func backupForm() ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		path := strings.TrimSpace(v[0])
		if path == "" {
			return nil, fmt.Errorf("type where the copy goes, such as /media/stick/club.qdb")
		}
		return ui.Backup{Path: path}, nil
	}
	return dialog.NewForm("Write a backup", send,
		dialog.Field{Label: "File", Hint: "a new file, on a stick for example; the desk stays open"})
}
