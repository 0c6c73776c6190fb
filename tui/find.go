package tui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// find answers the question that everybody asks: which court am I on, with whom, and when next?
func (m *Model) find() tea.Cmd {
	if m.ledger.Night() == nil {
		return m.fail(session.ErrNoNight)
	}
	people := func(c ui.Context) []dialog.Candidate {
		var out []dialog.Candidate
		for _, a := range c.Night().Roll {
			out = append(out, dialog.Candidate{ID: a.Person, Say: func() string { return whereabouts(c, a) }})
		}
		return out
	}
	take := func(id session.PersonID) ui.Intent { return ui.ShowPerson{Person: id} }
	return m.show(dialog.NewPick("Who?", "show", people, take))
}

// whereabouts says where somebody is and what comes next for that person.
func whereabouts(c ui.Context, a session.Attendance) string {
	n := c.Night()
	if g := n.Playing(a.Person); g != nil {
		us, them := g.A, g.B
		if g.B.Has(a.Person) {
			us, them = g.B, g.A
		}
		if next := nextTurn(c, a.Person); next != "" {
			return fmt.Sprintf("court %s%s%s", g.Court, with(c, us, a.Person), next)
		}
		return fmt.Sprintf("court %s%s against %s", g.Court, with(c, us, a.Person), c.Names.Team(them))
	}
	switch a.State {
	case session.Here:
		return fmt.Sprintf("bench, %d min%s", int(a.Waited(c.Now).Minutes()), nextTurn(c, a.Person))
	case session.Expected:
		return "not here yet"
	}
	return string(a.State)
}

// with names the partner of somebody in a side.
func with(c ui.Context, s session.Team, id session.PersonID) string {
	switch {
	case s[1] == "":
		return ""
	case s[0] == id:
		return " with " + c.Names.Short(s[1])
	}
	return " with " + c.Names.Short(s[0])
}

// nextTurn says in which planned round somebody plays next.
func nextTurn(c ui.Context, id session.PersonID) string {
	n := c.Night()
	if n.Settings.Flow == session.Rolling {
		return nextCourt(c, id)
	}
	if !c.Rotation.Ready {
		return ""
	}
	for i, r := range c.Rotation.Rounds {
		for _, g := range r.Games {
			if g.A.Has(id) || g.B.Has(id) {
				us := g.A
				if g.B.Has(id) {
					us = g.B
				}
				return fmt.Sprintf("; round %d on court %s%s", len(n.Rounds)+1+i, g.Court, with(c, us, id))
			}
		}
	}
	return ""
}

// nextCourt says when somebody on the bench of the rolling flow plays, and with whom if that is known.
func nextCourt(c ui.Context, id session.PersonID) string {
	for _, g := range c.Hall.Next {
		if g.A.Has(id) {
			return fmt.Sprintf("; next free court%s", with(c, g.A, id))
		}
		if g.B.Has(id) {
			return fmt.Sprintf("; next free court%s", with(c, g.B, id))
		}
	}
	for _, w := range c.Hall.Bench {
		if w.Person == id && w.Turn.Late > 0 {
			return "; plays " + w.Turn.Words()
		}
	}
	return ""
}
