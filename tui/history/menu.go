package history

import (
	"strings"

	"club/quadrille/session"
	"club/quadrille/tui/courts"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// menu offers what can be done about an action, and says what would be another way without it.
func menu(c ui.Context, a session.Action) ui.Dialog {
	text, why := Without(c, a)
	switch {
	case a.IsUndo():
		why = "redo (U) takes an undo back"
	case a.Undone:
		why = "undone already"
	case a.IsSent():
		why = "it is taken or refused, at its court"
	case !a.IsDone():
		why = "nobody did that"
	case why != "":
		text = "It cannot be undone now: " + why + "."
	}
	var items []dialog.Item
	if g := scored(c, a); g != nil {
		items = append(items, dialog.Item{Key: "e", Label: "correct this score", Intent: ui.Show{Dialog: correctForm(c, g)}})
	}
	items = append(items, dialog.Item{Key: "u", Label: "undo just this", Intent: ui.Do{Command: session.UndoAction{Action: a.ID}}, Why: why})
	return dialog.NewMenu(line.Cut(session.Describe(c.Club(), a), 60), items...).Noting(text)
}

// Without says what would be another way without an action, or why it cannot be undone. It is worked out by
// folding the night without it.
func Without(c ui.Context, a session.Action) (text, why string) {
	would, err := c.Ledger.Without(a.ID)
	if err != nil {
		return "", err.Error()
	}
	list := session.WouldBe(c.Club(), would)
	if len(list) == 0 {
		return "Without it nothing of the night would be another way.", ""
	}
	return "Without it: " + strings.Join(list, "; ") + ".", ""
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
