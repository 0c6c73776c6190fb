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

// typedEntries is the entry for results that were written on paper while the laptop was away.
func (m *Model) typedEntries() []palette.Entry {
	r, open := m.onPaper()
	if len(open) == 0 {
		return nil
	}
	return []palette.Entry{{
		Label: "enter results from paper", Note: fmt.Sprintf("round %d, a line for each court", r.Number),
		Take: func() ui.Intent { return ui.Show{Dialog: m.paperForm(r, open)} },
	}}
}

// onPaper is the round whose results come next from paper, and its games that have none: the one that was called last, or
// when that is over the first of those to come. There are no games in the rolling flow, and where no round is known.
func (m *Model) onPaper() (r paper.Round, open []paper.Game) {
	n := m.ledger.Night()
	if n == nil || n.Settings.Flow != session.Rounds {
		return r, nil
	}
	ahead := m.ahead()
	if ahead == nil {
		ahead = n.Plan // what was called last goes on as it was planned
	}
	for _, r := range paper.Newest(m.ledger.Club(), n, ahead) {
		for _, g := range r.Games {
			if !g.Played {
				open = append(open, g)
			}
		}
		if len(open) > 0 {
			return r, open
		}
	}
	return r, nil
}

// paperForm asks for the results of a round, a field for each court, and goes on with the next round.
func (m *Model) paperForm(r paper.Round, open []paper.Game) ui.Dialog {
	var form *dialog.Form
	send := func(v []string) (ui.Intent, error) {
		var lines []string
		typed := false
		for i, g := range open {
			if strings.TrimSpace(v[i]) == "" {
				lines = append(lines, "")
				continue
			}
			typed = true
			lines = append(lines, fmt.Sprintf("%d %s %s", r.Number, g.Court, v[i]))
		}
		if !typed {
			return nil, fmt.Errorf("type the score of a court, such as 11 7, or void where the game was not played")
		}
		read, err := paper.ReadTyped(strings.NewReader(strings.Join(lines, "\n")))
		if err != nil {
			return nil, err
		}
		return ui.Own{Do: func() tea.Cmd { return m.enterTyped(r.Number, read, form) }}, nil
	}
	var fields []dialog.Field
	for _, g := range open {
		fields = append(fields, dialog.Field{
			Label: "Court " + g.Court,
			Hint:  fmt.Sprintf("%s v %s: 11 7, or 9-6 timed, 9-6 retired b, walkover a, void; empty if it is not played yet", paper.Team(g.A), paper.Team(g.B)),
		})
	}
	form = dialog.NewForm(fmt.Sprintf("Results from paper: round %d", r.Number), send, fields...).
		Noting(fmt.Sprintf("The paper must have the letters %s behind this round: with others it is about other games.", r.Mark))
	return form
}

// enterTyped enters what was typed in one action, all of it or nothing, and asks for what is still missing.
func (m *Model) enterTyped(round int, typed paper.Typed, from ui.Dialog) tea.Cmd {
	desk, shown := m.desk, m.ahead()
	m.busy, m.after = true, pending{dialog: from, then: func(*session.Ledger) {
		if r, open := m.onPaper(); len(open) > 0 {
			m.dialogs = append(m.dialogs, m.paperForm(r, open))
		}
	}}
	return func() tea.Msg {
		done, err := paper.EnterShown(desk, typed, shown)
		if err != nil {
			return doneMsg{ledger: desk.Ledger(), err: err}
		}
		return doneMsg{ledger: desk.Ledger(), notice: fmt.Sprintf("%s of round %d, from paper", session.Counted(len(done), "result"), round)}
	}
}
