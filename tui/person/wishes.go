package person

import (
	"fmt"
	"slices"
	"strconv"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// mostWishes is how many wishes the menu can take back one by one; who has more edits them as text.
const mostWishes = 9

// wishMenu takes a wish of somebody, or takes one back.
func wishMenu(c ui.Context, p session.Person) ui.Dialog {
	items := []dialog.Item{
		{Key: "p", Label: "a partner", Intent: ui.Show{Dialog: partnerPick(p)}},
		{Key: "k", Label: "keep apart: never on one court", Intent: ui.Show{Dialog: apartPick(p)}},
		{Key: "t", Label: "not partners: never in one team", Intent: ui.Show{Dialog: noTeamPick(p)}},
	}
	back := func(label string, next session.Person) {
		if k := len(items) - 2; k <= mostWishes {
			items = append(items, dialog.Item{
				Key: strconv.Itoa(k), Label: "take back: " + label, Intent: ui.Do{Command: session.ChangePerson{Person: next}},
			})
		}
	}
	for i, t := range p.Together {
		next := copied(p)
		next.Together = slices.Delete(next.Together, i, i+1)
		back(fmt.Sprintf("partner %s, %s", c.Names.Full(t.With), gamesOf(t.Times)), next)
	}
	for i, id := range p.KeepApart {
		next := copied(p)
		next.KeepApart = slices.Delete(next.KeepApart, i, i+1)
		back("apart from "+c.Names.Full(id), next)
	}
	for i, id := range p.NotPartner {
		next := copied(p)
		next.NotPartner = slices.Delete(next.NotPartner, i, i+1)
		back("not partners with "+c.Names.Full(id), next)
	}
	if len(p.Courts) > 0 {
		next := copied(p)
		next.Courts = nil
		back("only on "+session.CourtNames(p.Courts), next)
	}
	return dialog.NewMenu(p.Name+": wishes", items...)
}

func gamesOf(times int) string {
	if times == 0 {
		return "every game"
	}
	return count(times, "game")
}

func copied(p session.Person) session.Person {
	p.Together, p.KeepApart, p.NotPartner = slices.Clone(p.Together), slices.Clone(p.KeepApart), slices.Clone(p.NotPartner)
	return p
}

// partnerPick asks for the partner, and then for how many games.
func partnerPick(p session.Person) ui.Dialog {
	return dialog.NewPick("Partner of "+p.Name, "take", others(p), func(id session.PersonID) ui.Intent {
		var items []dialog.Item
		for _, times := range []int{1, 2, 3, 4, 0} {
			next := copied(p)
			next.Together = slices.DeleteFunc(next.Together, func(t session.Together) bool { return t.With == id })
			next.Together = append(next.Together, session.Together{With: id, Times: times})
			items = append(items, dialog.Item{
				Key: strconv.Itoa(times), Label: gamesOf(times), Intent: ui.Do{Command: session.ChangePerson{Person: next}},
			})
		}
		return ui.Show{Dialog: dialog.NewMenu("Partners for how long?", items...)}
	})
}

// apartPick asks whom the person shall never meet.
func apartPick(p session.Person) ui.Dialog {
	return dialog.NewPick("Keep apart from "+p.Name, "keep apart", others(p), func(id session.PersonID) ui.Intent {
		next := copied(p)
		if !slices.Contains(next.KeepApart, id) {
			next.KeepApart = append(next.KeepApart, id)
		}
		return ui.Do{Command: session.ChangePerson{Person: next}}
	})
}

// noTeamPick asks whom the person shall never have as a partner.
func noTeamPick(p session.Person) ui.Dialog {
	return dialog.NewPick("Not partners with "+p.Name, "never partners", others(p), func(id session.PersonID) ui.Intent {
		next := copied(p)
		if !slices.Contains(next.NotPartner, id) {
			next.NotPartner = append(next.NotPartner, id)
		}
		return ui.Do{Command: session.ChangePerson{Person: next}}
	})
}

// others lists everybody else: those of tonight first.
func others(p session.Person) func(c ui.Context) []dialog.Candidate {
	return func(c ui.Context) []dialog.Candidate {
		var out, rest []dialog.Candidate
		n := c.Night()
		for _, o := range c.Club().People {
			if o.ID == p.ID {
				continue
			}
			if n != nil {
				if a := n.Attending(o.ID); a != nil {
					out = append(out, dialog.Candidate{ID: o.ID, Note: string(a.State)})
					continue
				}
			}
			rest = append(rest, dialog.Candidate{ID: o.ID})
		}
		return append(out, rest...)
	}
}
