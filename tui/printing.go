package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
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
		return ui.Own{Do: func() tea.Cmd { return m.print(k, path, form) }}, nil
	}
	form = dialog.NewForm("Print "+k.Name, send,
		dialog.Field{Label: "File", Value: k.Name + ".pdf", Hint: "a new file: a PDF, or plain text if its name ends in .txt"})
	return form
}

// print makes a sheet beside the screen, of the rotation that is shown.
func (m *Model) print(k paper.Kind, path string, from ui.Dialog) tea.Cmd {
	n := m.ledger.Night()
	if n == nil {
		m.refuse(session.ErrNoNight)
		return nil
	}
	var ahead []session.PlannedRound
	if n.Settings.Flow == session.Rounds && m.plan.Ready && m.plan.Err == nil {
		ahead = m.plan.Rotation.Rounds
	}
	night := paper.Of(m.ledger.Club(), n, ahead, m.now.Location())
	if m.options.Phones != nil {
		night.Phones, _ = m.options.Phones.Address()
	}
	m.busy, m.after = true, pending{dialog: from}
	desk, print := m.desk, m.options.Print
	return func() tea.Msg {
		lack, err := print(path, k.Of(night), night.Names())
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
