// Package history is the screen of what was done tonight, from which any of it can be undone.
package history

import (
	"fmt"
	"slices"

	"club/quadrille/session"
	"club/quadrille/tui/courts"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// History is the screen of the night's actions, the newest first.
type History struct{ cursor ui.Cursor }

// New makes the screen.
func New() *History { return &History{} }

// Leave implements ui.Leaver: the newest action is what one comes for the next time.
func (h *History) Leave() { h.cursor = 0 }

// Typing implements ui.Screen.
func (h *History) Typing() bool { return false }

// actions lists what was done, newest first.
func actions(c ui.Context) []session.Action {
	out := c.Ledger.Actions()
	slices.Reverse(out)
	return out
}

// Actions implements ui.Screen.
func (h *History) Actions(c ui.Context) []ui.Action {
	list := actions(c)
	nothing := ""
	if len(list) == 0 {
		nothing = "nothing was done yet"
	}
	return []ui.Action{
		h.cursor.Move(len(list)),
		ui.Act(ui.Bind("undo this, correct a score", "enter", "enter"), func() ui.Intent {
			return ui.Show{Dialog: menu(c, list[h.cursor.In(len(list))])}
		}).Because(nothing),
		ui.Ask(ui.Bind("by courts", "t", "t"), ui.Open{Page: ui.TimelinePage}).Explained("the night by its courts: games, idle time, what the pace foretells"),
	}
}

// menu offers what can be done about an action.
func menu(c ui.Context, a session.Action) ui.Dialog {
	why := ""
	switch {
	case a.IsUndo():
		why = "redo (U) takes an undo back"
	case a.Undone:
		why = "undone already"
	case !a.IsDone():
		why = "nobody did that"
	}
	var items []dialog.Item
	if g := scored(c, a); g != nil {
		items = append(items, dialog.Item{Key: "e", Label: "correct this score", Intent: ui.Show{Dialog: correctForm(c, g)}})
	}
	items = append(items, dialog.Item{Key: "u", Label: "undo just this", Intent: ui.Do{Command: session.UndoAction{Action: a.ID}}, Why: why})
	return dialog.NewMenu(line.Cut(session.Describe(c.Club(), a), 60), items...)
}

// scored is the finished game that an action gave its score.
func scored(c ui.Context, a session.Action) *session.Game {
	n := c.Night()
	if n == nil || a.Undone {
		return nil
	}
	for _, e := range a.Events {
		id := session.GameID(0)
		switch e := e.(type) {
		case session.GameFinished:
			id = e.Game
		case session.ScoreCorrected:
			id = e.Game
		}
		if g := n.Game(id); g != nil && !g.Running() {
			return g
		}
	}
	return nil
}

// correctForm asks for the right score of a finished game.
func correctForm(c ui.Context, g *session.Game) ui.Dialog {
	id, rules := g.ID, g.Rules
	send := func(v []string) (ui.Intent, error) {
		final, err := courts.ParseScore(rules, v[0])
		if err != nil {
			return nil, err
		}
		return ui.Do{Command: session.CorrectScore{Game: id, Final: final}}, nil
	}
	return dialog.NewForm(c.Names.Team(g.A)+" v "+c.Names.Team(g.B), send,
		dialog.Field{Label: "Score", Value: courts.ScoreText(*g.Final), Hint: c.Names.Team(g.A) + " are a, first: 11-7, 9-6 timed, 9-6 retired b, void"})
}

// Click implements ui.Screen.
func (h *History) Click(c ui.Context, _, y int) ui.Intent {
	list := actions(c)
	from, until := line.Window(len(list), c.Height-1, h.cursor.In(len(list)))
	if i := from + y - 1; i >= from && i < until {
		h.cursor = ui.Cursor(i)
	}
	return nil
}

// Lines implements ui.Screen.
func (h *History) Lines(c ui.Context) []string {
	list := actions(c)
	out := []string{c.Theme.Dim.Render("what was done, newest first")}
	if len(list) == 0 {
		return append(out, "", "Nothing yet.")
	}
	cursor := h.cursor.In(len(list))
	from, until := line.Window(len(list), c.Height-1, cursor)
	for i, a := range list[from:until] {
		text := fmt.Sprintf("%s  %s", a.Time.In(c.Now.Location()).Format("15:04"), c.Ledger.Describe(a))
		if a.Undone && !a.IsUndo() {
			text += "  (undone)"
		}
		text = line.Fit(text, c.Width-2)
		switch {
		case from+i == cursor:
			text = "> " + c.Theme.Selected.Render(text)
		case a.Undone || a.IsUndo():
			text = "  " + c.Theme.Dim.Render(text)
		default:
			text = "  " + text
		}
		out = append(out, text)
	}
	return out
}
