package courts

import (
	"fmt"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/care"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/emergency"
	"club/quadrille/tui/ui"
)

// injuryItem is the way to say that somebody on a court is hurt, or what becomes of the game once that is said.
func injuryItem(c ui.Context, g *session.Game) dialog.Item {
	if x, ok := c.Night().Unsettled(g); ok {
		return dialog.Item{
			Key: "i", Label: c.Names.Full(x.Person) + " is hurt: substitute, retire, void or play on",
			Intent: later(func() ui.Dialog { return AfterInjury(c, g) }),
		}
	}
	return dialog.Item{Key: "i", Label: "somebody is hurt: stop the game", Intent: later(func() ui.Dialog { return whoIsHurt(c, g) })}
}

// whoIsHurt asks which player is hurt.
func whoIsHurt(c ui.Context, g *session.Game) ui.Dialog {
	var items []dialog.Item
	for i, id := range g.Players() {
		items = append(items, dialog.Item{
			Key: fmt.Sprint(i + 1), Label: c.Names.Full(id), Intent: later(func() ui.Dialog { return Injury(c, id) }),
		})
	}
	return dialog.NewMenu(fmt.Sprintf("Court %s: who is hurt?", g.Court), append(items, cardItem(c))...).Noting(care.Hurt)
}

// Injury asks how somebody is hurt, or offers to let somebody back whom a qualified person has cleared.
func Injury(c ui.Context, id session.PersonID) ui.Dialog {
	n, name := c.Night(), c.Names.Full(id)
	x, out := n.OutForTonight(id)
	head := dialog.Item{Key: "h", Label: "a head injury is suspected: out for tonight", Intent: ui.Show{Dialog: injuryForm(c, id, true)}}
	other := dialog.Item{Key: "o", Label: "hurt otherwise: the game stands until you decide", Intent: ui.Show{Dialog: injuryForm(c, id, false)}}
	if n.Playing(id) == nil {
		other.Label = "hurt otherwise: note it"
	}
	if !out {
		return dialog.NewMenu("How is "+name+" hurt?", head, other, cardItem(c)).Noting(care.Hurt)
	}
	head.Why = "noted at " + x.At.In(c.Now.Location()).Format("15:04")
	items := []dialog.Item{
		{Key: "s", Label: name + " stays out for tonight", Intent: ui.Close{}},
		{Key: "c", Label: "a qualified person has cleared it", Intent: ui.Show{Dialog: clearForm(name, id)}},
		other,
	}
	return dialog.NewMenu(name+" is out for tonight", append(items, head, cardItem(c))...).Noting(care.HeadInjury)
}

// cardItem leads to the emergency card.
func cardItem(c ui.Context) dialog.Item {
	return dialog.Item{Key: "e", Label: "emergency card: address, access, defibrillator", Intent: ui.Show{Dialog: emergency.New(c.Ledger)}}
}

// injuryForm takes a note, and stops the game.
func injuryForm(c ui.Context, id session.PersonID, head bool) ui.Dialog {
	heading := c.Names.Full(id) + " is hurt"
	if head {
		heading = c.Names.Full(id) + ": suspected head injury"
	}
	game := session.GameID(0)
	if g := c.Night().Playing(id); g != nil {
		game = g.ID
	}
	send := func(v []string) (ui.Intent, error) {
		do := ui.Do{Command: session.ReportInjury{Person: id, Head: head, Note: v[0]}}
		if game != 0 {
			do.Then = func(c ui.Context) ui.Dialog { return AfterInjury(c, c.Night().Game(game)) }
		}
		return do, nil
	}
	return dialog.NewForm(heading, send,
		dialog.Field{Label: "Note", Hint: "enter notes it as it is; words for yourself, which the hall never sees"})
}

// AfterInjury asks what becomes of a game in which somebody is hurt.
func AfterInjury(c ui.Context, g *session.Game) ui.Dialog {
	x, ok := c.Night().Unsettled(g)
	if !ok { // it was decided meanwhile
		return courtMenu(c, *c.Night().Court(g.Court))
	}
	name, team := c.Names.Full(x.Person), g.Team(scoring.A)
	if g.B.Has(x.Person) {
		team = g.Team(scoring.B)
	}
	settle := func(how session.Settlement) ui.Intent {
		return ui.Do{Command: session.SettleInjury{Person: x.Person, How: how}}
	}
	sub := dialog.Item{Key: "x", Label: "send on a sub", Intent: ui.Show{Dialog: benchPick("Who is the sub for "+name+"?", func(in session.PersonID) ui.Intent {
		return ui.Do{Command: session.SettleInjury{Person: x.Person, How: session.SubForHurt, In: in}}
	})}}
	if len(c.Night().Bench()) == 0 {
		sub.Why = "nobody is on the bench"
	}
	on := dialog.Item{Key: "p", Label: name + " plays on", Intent: settle(session.PlaysOn)}
	note := care.Hurt
	if _, out := c.Night().OutForTonight(x.Person); out {
		note = care.HeadInjury
		on.Why = "out for tonight"
	}
	return dialog.NewMenu(fmt.Sprintf("Court %s stands: what now?", g.Court),
		sub,
		dialog.Item{Key: "g", Label: "the team retires: " + c.Names.Team(team), Intent: settle(session.HurtRetires)},
		dialog.Item{Key: "s", Label: "make the game void (it does not count)", Intent: settle(session.VoidForHurt)},
		on,
		cardItem(c),
		dialog.Item{Key: "z", Label: "decide later: the game stands", Intent: ui.Close{}},
	).Noting(note + " Retire: " + session.RetireNote(g))
}

// clearForm takes the name of who decided that somebody may play again tonight.
func clearForm(name string, id session.PersonID) ui.Dialog {
	send := func(v []string) (ui.Intent, error) {
		return ui.Do{Command: session.ClearToPlay{Person: id, By: v[0]}}, nil
	}
	return dialog.NewForm("May "+name+" play again tonight?", send,
		dialog.Field{Label: "Cleared by", Hint: "the qualified person who assessed it, such as: Dr Vale, physician"}).Noting(care.Clearance)
}
