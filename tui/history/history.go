// Package history is the screen of what was done tonight, from which any of it can be undone.
package history

import (
	"fmt"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// History is the screen of the night's actions, the newest first.
type History struct {
	cursor ui.Cursor
	open   map[session.GameID]bool // games whose rallies are listed one by one
	of     *session.Ledger         // what rows is about
	rows   []row
}

// New makes the screen.
func New() *History { return &History{open: map[session.GameID]bool{}} }

// Leave implements ui.Leaver: the newest action is what one comes for the next time.
func (h *History) Leave() { h.cursor, h.open, h.of = 0, map[session.GameID]bool{}, nil }

// Typing implements ui.Screen.
func (h *History) Typing() bool { return false }

// Survey implements ui.Surveyor.
func (h *History) Survey(c ui.Context) {
	if h.of != c.Ledger {
		h.of, h.rows = c.Ledger, rowsOf(c, h.open)
	}
}

// Actions implements ui.Screen.
func (h *History) Actions(c ui.Context) []ui.Action {
	nothing, name := "", "undo this, correct a score"
	if len(h.rows) == 0 {
		nothing = "nothing was done yet"
	} else if r := h.rows[h.cursor.In(len(h.rows))]; r.folds > 0 {
		name = "list the rallies"
		if h.open[r.game] {
			name = "fold the rallies"
		}
	}
	return []ui.Action{
		h.cursor.Move(len(h.rows)),
		ui.Act(ui.Bind(name, "enter", "enter"), func() ui.Intent { return h.take(c, h.rows[h.cursor.In(len(h.rows))]) }).Because(nothing),
		ui.Ask(ui.Bind("in short", "y", "y"), ui.Open{Page: ui.SummaryPage}).Explained("the night in short: games, courts, who leads, fairness"),
		ui.Ask(ui.Bind("by courts", "t", "t"), ui.Open{Page: ui.TimelinePage}).Explained("the night by its courts: games, idle time, what the pace foretells"),
	}
}

// take opens what a row stands for: the rallies of a game, or what can be done about an action.
func (h *History) take(c ui.Context, r row) ui.Intent {
	if r.folds == 0 {
		return ui.Show{Dialog: menu(c, r.action)}
	}
	h.open[r.game] = !h.open[r.game]
	h.rows = rowsOf(c, h.open)
	return nil
}

// Click implements ui.Screen: a click chooses, a click on what is chosen opens it.
func (h *History) Click(c ui.Context, _, y int) ui.Intent {
	at := h.cursor.In(len(h.rows))
	from, until := line.Window(len(h.rows), c.Height-1, at)
	i := from + y - 1
	switch {
	case i < from || i >= until:
		return nil
	case i == at:
		return h.take(c, h.rows[i])
	}
	h.cursor = ui.Cursor(i)
	return nil
}

// Lines implements ui.Screen.
func (h *History) Lines(c ui.Context) []string {
	out := []string{c.Theme.Dim.Render("what was done, newest first")}
	if len(h.rows) == 0 {
		return append(out, "", "Nothing yet.")
	}
	cursor := h.cursor.In(len(h.rows))
	from, until := line.Window(len(h.rows), c.Height-1, cursor)
	for i, r := range h.rows[from:until] {
		text := fmt.Sprintf("%s  %s", r.action.Time.In(c.Now.Location()).Format("15:04"), r.text)
		text = line.Fit(text, c.Width-2)
		switch {
		case from+i == cursor:
			text = "> " + c.Theme.Selected.Render(text)
		case r.quiet:
			text = "  " + c.Theme.Dim.Render(text)
		default:
			text = "  " + text
		}
		out = append(out, text)
	}
	return out
}
