package courts

import (
	"fmt"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// gameMenu offers what can be noted about a game besides its rallies.
func gameMenu(c ui.Context, g *session.Game) *dialog.Menu {
	none, notDue := "", ""
	if len(g.Rallies) == 0 {
		none = "no rally is noted yet"
	}
	if !g.EndsDue() {
		notDue = "not due"
	}
	left := fmt.Sprintf(": %d and %d left", g.TimeOutsLeft(scoring.A), g.TimeOutsLeft(scoring.B))
	return dialog.NewMenu(fmt.Sprintf("Court %s: this game", g.Court),
		dialog.Item{Key: "s", Label: "correct the score, server or boxes", Intent: later(func() ui.Dialog { return setRightForm(c, g) })},
		dialog.Item{Key: "f", Label: "add a missed rally", Intent: later(func() ui.Dialog { return forgottenForm(c, g) })},
		dialog.Item{Key: "r", Label: "a rally was noted wrongly, or is one too many", Intent: later(func() ui.Dialog { return wrongForm(c, g) }), Why: none},
		dialog.Item{Key: "t", Label: "time-out" + left, Intent: later(func() ui.Dialog { return timeOutMenu(c, g) })},
		dialog.Item{Key: "m", Label: "medical time-out: 15 minutes, once a team", Intent: later(func() ui.Dialog { return entryMenu(c, g, "Medical time-out: whose?", scoring.MedicalTimeOut) })},
		dialog.Item{Key: "o", Label: "referee time-out: wet court, a ball, heat", Intent: note(g, scoring.Entry{Kind: scoring.RefereeTimeOut})},
		dialog.Item{Key: "e", Label: "ends are switched", Intent: note(g, scoring.Entry{Kind: scoring.EndsSwitched}), Why: notDue},
		dialog.Item{Key: "p", Label: "technical foul: costs a point", Intent: later(func() ui.Dialog { return entryMenu(c, g, "Technical foul: whose?", scoring.TechnicalFoul) })},
		dialog.Item{Key: "g", Label: "a team retires", Intent: later(func() ui.Dialog {
			return entryMenu(c, g, "Which team retires?", scoring.TeamRetired).Noting(session.RetireNote(g))
		})},
		dialog.Item{Key: "u", Label: "time is up: the score decides", Intent: note(g, scoring.Entry{Kind: scoring.TimeUp})},
		dialog.Item{Key: "n", Label: "write a note on the sheet", Intent: later(func() ui.Dialog { return remarkForm(g) })},
		dialog.Item{Key: "l", Label: "the sheet: all that was noted", Intent: later(func() ui.Dialog { return sheetPage(g.ID) })},
		dialog.Item{Key: "w", Label: "faults of this game and of tonight", Intent: later(func() ui.Dialog { return faultsPage(g.ID) })},
		dialog.Item{Key: "c", Label: "more about this court", Intent: later(func() ui.Dialog { return courtMenu(c, *c.Night().Court(g.Court)) })},
	)
}

// later opens a box that is only made then.
func later(make func() ui.Dialog) ui.Intent {
	return ui.Later{Make: func() ui.Intent { return ui.Show{Dialog: make()} }}
}

// entryMenu asks which team an entry is about.
func entryMenu(c ui.Context, g *session.Game, heading string, kind scoring.Kind) *dialog.Menu {
	return dialog.NewMenu(heading, entryItems(c, g, kind)...)
}

func entryItems(c ui.Context, g *session.Game, kind scoring.Kind) []dialog.Item {
	var items []dialog.Item
	for _, side := range []scoring.Team{scoring.A, scoring.B} {
		items = append(items, dialog.Item{
			Key: string('a' + rune(side)), Label: c.Names.FullTeam(g.Team(side)), Intent: note(g, scoring.Entry{Kind: kind, Team: side}),
		})
	}
	return items
}

// timeOutMenu asks whose time-out it is, and says how many each team has left.
func timeOutMenu(c ui.Context, g *session.Game) ui.Dialog {
	items := entryItems(c, g, scoring.TimeOut)
	for i := range items {
		left := g.TimeOutsLeft(scoring.Team(i))
		items[i].Label += fmt.Sprintf(": %d left", left)
		if left == 0 {
			items[i].Why = "used up"
		}
	}
	return dialog.NewMenu("Time-out of one minute: whose?", items...)
}

// sheetPage lists all that was noted of a game, the newest first.
func sheetPage(game session.GameID) ui.Dialog {
	return dialog.NewPage("The sheet, newest first", func(c ui.Context) []string {
		g := c.Night().Game(game)
		if g == nil {
			return nil
		}
		entries := g.Sheet().Entries
		out := []string{fmt.Sprintf("Court %s: %s v %s, %s", g.Court, c.Names.Team(g.A), c.Names.Team(g.B), g.State.Score), ""}
		for i := len(entries) - 1; i >= 0; i-- {
			out = append(out, fmt.Sprintf("%3d  %s", i+1, session.EntryText(c.Club(), g, entries[i])))
		}
		if len(entries) == 0 {
			out = append(out, "Nothing is noted yet.")
		}
		return out
	})
}
