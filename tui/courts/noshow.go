package courts

import (
	"fmt"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// noShowItem is the way to say that somebody who was called is nowhere to be seen.
func noShowItem(c ui.Context, g *session.Game) dialog.Item {
	item := dialog.Item{Key: "p", Label: "a player did not come", Intent: later(func() ui.Dialog { return NoShow(c, g) })}
	switch left := c.Night().GraceLeft(g, c.Now); {
	case len(g.Rallies) > 0:
		item.Why = "play has begun"
	case left > 0:
		item.Label += fmt.Sprintf(": %s of grace left", minutes(left))
	default:
		item.Label += ": the grace is over"
	}
	return item
}

// NoShow asks who of a game did not come, and then what is done about it.
func NoShow(c ui.Context, g *session.Game) ui.Dialog {
	var items []dialog.Item
	for i, id := range g.Players() {
		items = append(items, dialog.Item{
			Key: fmt.Sprint(i + 1), Label: c.Names.Full(id), Intent: later(func() ui.Dialog { return absentMenu(c, g, id) }),
		})
	}
	return dialog.NewMenu(fmt.Sprintf("Court %s: who did not come?", g.Court), items...)
}

// absentMenu offers what can be done when somebody did not come.
func absentMenu(c ui.Context, g *session.Game, absent session.PersonID) ui.Dialog {
	other := g.Team(scoring.B)
	if g.B.Has(absent) {
		other = g.Team(scoring.A)
	}
	walkover := dialog.Item{
		Key: "w", Label: "walkover to " + c.Names.Team(other),
		Intent: ui.Do{Command: session.NoShow{Game: g.ID, Person: absent}},
	}
	if left := c.Night().GraceLeft(g, c.Now); left > 0 {
		walkover.Why = "in " + minutes(left) + ", when the grace is over"
	}
	instead := dialog.Item{Key: "x", Label: "send on a sub", Intent: ui.Show{Dialog: benchPick(
		"Who is the sub for "+c.Names.Full(absent)+"?",
		func(in session.PersonID) ui.Intent {
			return ui.Do{Command: session.NoShow{Game: g.ID, Person: absent, In: in}}
		})}}
	if len(c.Night().Bench()) == 0 {
		instead.Why = "nobody is on the bench"
	}
	wait := dialog.Item{Key: "z", Label: "wait a little longer", Intent: ui.Close{}}
	return dialog.NewMenu(c.Names.Full(absent)+" rests until back", instead, walkover, wait)
}

func minutes(n int) string {
	if n == 1 {
		return "1 minute"
	}
	return fmt.Sprintf("%d minutes", n)
}
