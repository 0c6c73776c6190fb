package tui

import (
	"fmt"
	"reflect"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/courtside"
	"club/quadrille/session/paper"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/palette"
	"club/quadrille/tui/ui"
)

// printEntries are the sheets that can be printed of the night.
func (m *Model) printEntries() []palette.Entry {
	if m.options.Print == nil || m.ledger.Night() == nil {
		return nil
	}
	var out []palette.Entry
	for _, k := range paper.Kinds() {
		out = append(out, palette.Entry{
			Label: "print " + k.Name, Note: k.What, Take: func() ui.Intent { return ui.Show{Dialog: m.printForm(k)} },
		})
	}
	return out
}

// printForm asks where a sheet goes.
func (m *Model) printForm(k paper.Kind) ui.Dialog {
	var form *dialog.Form
	send := func(v []string) (ui.Intent, error) {
		path := strings.TrimSpace(v[0])
		if path == "" {
			return nil, fmt.Errorf("type where the sheet goes, such as %s.pdf", k.Name)
		}
		on := ""
		if len(v) > 1 {
			on = v[1]
			m.paper = on
		}
		return ui.Own{Do: func() tea.Cmd { return m.print(k, path, on, form) }}, nil
	}
	fields := []dialog.Field{{Label: "File", Value: k.Name + ".pdf", Hint: "a new file: a PDF, or plain text if its name ends in .txt"}}
	if sizes := m.options.Papers; len(sizes) > 0 {
		on := m.paper // as the last time
		if on == "" {
			on = sizes[0]
		}
		fields = append(fields, dialog.Field{Label: "Paper", Value: on, Options: sizes, Hint: "the size of the paper in the printer"})
	}
	form = dialog.NewForm("Print "+k.Name, send, fields...)
	return form
}

// print makes a sheet beside the screen, of the rotation that is shown.
func (m *Model) print(k paper.Kind, path, on string, from ui.Dialog) tea.Cmd {
	n := m.ledger.Night()
	if n == nil {
		m.refuse(session.ErrNoNight)
		return nil
	}
	ahead := m.ahead()
	night := paper.Of(m.ledger.Club(), n, ahead, m.now.Location())
	if m.options.Phones != nil {
		night.Phones, _ = m.options.Phones.Address()
		night.Pages = m.courtPages()
	}
	m.busy, m.after = true, pending{dialog: from, then: func(*session.Ledger) { m.keepPrinted(k, ahead) }}
	desk, print := m.desk, m.options.Print
	return func() tea.Msg {
		lack, err := print(path, on, k.Of(night), night.Names())
		if err != nil {
			return doneMsg{ledger: desk.Ledger(), err: fmt.Errorf("nothing printed: %w", err)}
		}
		notice := "sheet written to " + path
		if len(lack) > 0 {
			notice += "; it has □ in " + strings.Join(lack, ", ") + ": print a .txt for these"
		}
		return doneMsg{ledger: desk.Ledger(), notice: notice}
	}
}

// courtPages are the addresses of the pages of the courts, where they send scores.
func (m *Model) courtPages() map[string]string {
	out := map[string]string{}
	for court, code := range courtside.Of(m.ledger, m.now).Codes() {
		if url, _ := m.options.Phones.Court(code); url != "" {
			out[string(court)] = url
		}
	}
	return out
}

// ahead are the rounds to come as they are shown; nil where there are none.
func (m *Model) ahead() []session.PlannedRound {
	n := m.ledger.Night()
	if n == nil || n.Settings.Flow != session.Rounds || !m.plan.Ready || m.plan.Err != nil {
		return nil
	}
	return m.plan.Rotation.Rounds
}

// keepPrinted takes note of the rounds that stand on paper now, if the sheet has them: they do not become better any
// more. Who comes or goes changes them all the same, as it must.
func (m *Model) keepPrinted(k paper.Kind, rounds []session.PlannedRound) {
	if k.HasRounds() && len(rounds) > 0 {
		m.printed = rounds
		m.plan.Looking.Printed = m.asPrinted()
		m.survey()
	}
}

// asPrinted tells whether the rounds to come stand on paper just so.
func (m *Model) asPrinted() bool {
	rounds := m.plan.Rounds
	at := len(m.printed) - len(rounds)
	return len(rounds) > 0 && at >= 0 && reflect.DeepEqual(m.printed[at:], rounds)
}
