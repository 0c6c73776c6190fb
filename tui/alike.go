package tui

import (
	"errors"
	"fmt"
	"maps"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// asksAlike asks who is meant, where a new name is nearly that of somebody else, and tells whether it does. An answer
// gives the same command again: of a roster with many such names it asks about the next one then.
func (m *Model) asksAlike(msg doneMsg, after pending) bool {
	var alike *session.AlikeError
	if !errors.As(msg.err, &alike) {
		return false
	}
	var ask ui.Dialog
	switch c := msg.command.(type) {
	case session.AddGuest:
		known := alike.Pairs[0].Known
		why := ""
		if n := m.ledger.Night(); n != nil {
			if a := n.Attending(known.ID); a != nil && a.State == session.Here {
				why = "is here already"
			}
		}
		ask = guestMenu(c, known, why, after.then)
	case session.ImportRoster:
		ask = lineMenu(c, alike.Pairs, after.then)
	default:
		return false
	}
	if after.dialog != nil {
		m.closeDialog(after.dialog)
	}
	if len(msg.reading) > 0 {
		m.dialogs = append(m.dialogs, readingOf(msg.reading))
	}
	m.dialogs = append(m.dialogs, ask)
	return true
}

// guestMenu asks whether a guest is somebody whom the club knows. Why says why that person cannot be checked in.
func guestMenu(c session.AddGuest, known session.Person, why string, then func(*session.Ledger)) ui.Dialog {
	sure, checkIn := c, session.CheckInAs{Person: known.ID}
	sure.Sure = true
	if known.Group == "" {
		checkIn.Group = c.Group
	}
	return dialog.NewMenu(fmt.Sprintf("Is %s the %s whom the club knows?", c.Name, known.Name),
		dialog.Item{Key: "y", Label: "yes: check " + known.Name + " in", Why: why, Intent: ui.Do{Command: checkIn, After: then}},
		dialog.Item{Key: "n", Label: "no: add " + c.Name + " as a guest", Intent: ui.Do{Command: sure, After: then}},
	)
}

// lineMenu asks whether the first of some lines of a roster names somebody who is there under another spelling.
func lineMenu(c session.ImportRoster, pairs []session.Alike, then func(*session.Ledger)) ui.Dialog {
	p := pairs[0]
	answer := func(same session.SameName) ui.Intent {
		next := c
		next.Lines = maps.Clone(c.Lines)
		if next.Lines == nil {
			next.Lines = map[int]session.SameName{}
		}
		next.Lines[p.Line] = same
		return ui.Do{Command: next, After: then}
	}
	others := c
	others.Same = session.TwoAlike
	one := dialog.Item{Key: "y", Label: "yes: one person, called " + p.Known.Name, Intent: answer(session.OneAlike)}
	heading := fmt.Sprintf("Line %d: is %s the %s whom the club knows?", p.Line, p.Name, p.Known.Name)
	if p.Other > 0 {
		heading = fmt.Sprintf("Line %d: is %s the %s of line %d?", p.Line, p.Name, p.Known.Name, p.Other)
		one.Why = "take one of the lines out of the file, and open it again"
	}
	items := []dialog.Item{one, {Key: "n", Label: "no: " + p.Name + " is somebody else", Intent: answer(session.TwoAlike)}}
	if more := len(pairs) - 1; more > 0 {
		items = append(items, dialog.Item{Key: "a", Label: fmt.Sprintf("no to this and to the %d more to ask about", more), Intent: ui.Do{Command: others, After: then}})
	}
	return dialog.NewMenu(heading, items...)
}
