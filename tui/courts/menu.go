package courts

import (
	"cmp"
	"fmt"
	"slices"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// courtMenu offers all that can be done about a court.
func courtMenu(c ui.Context, court session.Court) ui.Dialog {
	return dialog.NewMenu(fmt.Sprintf("Court %s", court.ID), courtItems(c, court)...)
}

// Choice is an item of a court's menus, with the keys that lead to its menu from the court.
type Choice struct {
	Before string
	dialog.Item
}

// Choices lists all that can be done about a court and the game that goes on there.
func Choices(c ui.Context, court session.Court) []Choice {
	var out []Choice
	for _, item := range courtItems(c, court) {
		out = append(out, Choice{"m", item})
	}
	if g := c.Night().Game(court.Game); g != nil {
		items := gameMenu(c, g).Items()
		for _, item := range items[:len(items)-1] { // the last leads to the court
			out = append(out, Choice{"m g", item})
		}
	}
	return out
}

// gridMenu is courtMenu with the way to the sheet of the game that goes on there.
func gridMenu(c ui.Context, court session.Court) ui.Dialog {
	items := courtItems(c, court)
	if g := c.Night().Game(court.Game); g != nil {
		for i, id := range g.Players() {
			items = append(items, dialog.Item{
				Key: fmt.Sprint(i + 1), Label: c.Names.Full(id) + ": the page", Intent: ui.ShowPerson{Person: id, Among: g.Players()},
			})
		}
		sheet := dialog.Item{Key: "g", Label: "this game: time-outs, corrections, faults", Intent: later(func() ui.Dialog { return gameMenu(c, g) })}
		items = slices.Insert(items, 3, sheet) // after the ways to say that somebody is missing or hurt
	}
	return dialog.NewMenu(fmt.Sprintf("Court %s", court.ID), items...)
}

func courtItems(c ui.Context, court session.Court) []dialog.Item {
	n := c.Night()
	g := n.Game(court.Game)
	noGame := ""
	if g == nil {
		noGame = "no game here"
	}
	var items []dialog.Item
	if g != nil {
		walkover := func(side scoring.Team) ui.Intent { return over(g, side, scoring.Walkover) }
		items = append(items,
			dialog.Item{Key: "x", Label: "substitute for a player", Intent: later(func() ui.Dialog { return replaceMenu(c, g) })},
			noShowItem(c, g),
			injuryItem(c, g),
			dialog.Item{Key: "a", Label: "walkover to " + c.Names.Team(g.A), Intent: walkover(scoring.A)},
			dialog.Item{Key: "b", Label: "walkover to " + c.Names.Team(g.B), Intent: walkover(scoring.B)},
		)
	}
	items = append(items, dialog.Item{Key: "s", Label: "make the game void (it does not count)", Intent: setAside(g), Why: noGame})
	if n.Settings.Flow == session.Rolling {
		busy := ""
		if g != nil {
			busy = "a game goes on"
		}
		items = append(items, dialog.Item{Key: "n", Label: "call the next four here", Intent: ui.Do{Command: session.CallGame{Court: court.ID}}, Why: busy})
	}
	if court.Open {
		items = append(items, dialog.Item{Key: "c", Label: "close this court", Intent: ui.Do{Command: session.CloseCourt{Court: court.ID}}})
	} else {
		items = append(items, dialog.Item{Key: "o", Label: "open this court", Intent: ui.Do{Command: session.OpenCourt{Court: court.ID}}})
	}
	items = append(items, dialog.Item{Key: "l", Label: "for levels: now " + court.Levels(), Intent: later(func() ui.Dialog { return levelsForm(court) })})
	items = append(items, dialog.Item{Key: "t", Label: "note what is particular: now " + cmp.Or(court.Note, "nothing"), Intent: later(func() ui.Dialog { return noteForm(court) })})
	if n.CourtCode(court.ID) != "" {
		items = append(items, dialog.Item{Key: "q", Label: "show the code with which this court sends its score", Intent: ui.CourtCode{Court: court.ID}})
	}
	return append(items, dialog.Item{Key: "+", Label: "add one more court", Intent: ui.Do{Command: session.OpenCourt{}}})
}

// over ends a game that was not played, to the target.
func over(g *session.Game, winner scoring.Team, how scoring.How) ui.Intent {
	a, b := g.Rules.To, 0
	if winner == scoring.B {
		a, b = b, a
	}
	final, err := g.Rules.Final(a, b, how)
	if err != nil {
		return ui.Refuse{Err: err}
	}
	return ui.Do{Command: session.FinishGame{Game: g.ID, Final: final}}
}

func setAside(g *session.Game) ui.Intent {
	if g == nil {
		return nil
	}
	final, err := g.Rules.Final(0, 0, scoring.Void)
	if err != nil {
		return ui.Refuse{Err: err}
	}
	return ui.Do{Command: session.FinishGame{Game: g.ID, Final: final}}
}

// replaceMenu asks who comes out of a game, and then who goes in.
func replaceMenu(c ui.Context, g *session.Game) ui.Dialog {
	var items []dialog.Item
	for i, id := range g.Players() {
		items = append(items, dialog.Item{
			Key: fmt.Sprint(i + 1), Label: c.Names.Full(id),
			Intent: ui.Show{Dialog: substitutePick(c, g.ID, id)},
		})
	}
	return dialog.NewMenu(fmt.Sprintf("Court %s: who comes out?", g.Court), items...)
}

// substitutePick asks who goes in for somebody who comes out.
func substitutePick(c ui.Context, game session.GameID, out session.PersonID) ui.Dialog {
	return benchPick("Who is the sub for "+c.Names.Full(out)+"?", func(in session.PersonID) ui.Intent {
		return ui.Do{Command: session.Substitute{Game: game, Out: out, In: in}}
	})
}

// benchPick asks for somebody on the bench, the one who has waited longest first.
func benchPick(heading string, take func(session.PersonID) ui.Intent) ui.Dialog {
	people := func(c ui.Context) []dialog.Candidate {
		var list []dialog.Candidate
		for _, a := range c.Night().Bench() {
			had := c.Night().TurnsOf(a.Person)
			note := fmt.Sprintf("waits %d min, games: %d", int(a.Waited(c.Now).Minutes()), had.Games)
			if also := had.Also(); also != "" {
				note += ", " + also
			}
			list = append(list, dialog.Candidate{ID: a.Person, Note: note})
		}
		return list
	}
	return dialog.NewPick(heading, "send on", people, take)
}
