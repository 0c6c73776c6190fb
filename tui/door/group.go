package door

import (
	"fmt"
	"strconv"
	"strings"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// asksGroup tells whether tonight's teams need a group of somebody who has none of the two.
func asksGroup(c ui.Context, r row) bool {
	n := c.Night()
	return n != nil && n.NeedsGroups() && !n.Grouped(c.Club(), r.person.ID)
}

// CheckIn checks somebody in whom the club knows, and asks for the group first where teams need one.
func CheckIn(c ui.Context, p session.Person) ui.Intent { return checkIn(c, row{person: p}, nil) }

// checkIn checks somebody in whom the club knows, and asks for the group first where teams need one.
func checkIn(c ui.Context, r row, done func(*session.Ledger)) ui.Intent {
	id := r.person.ID
	if !asksGroup(c, r) {
		return ui.Do{Command: session.CheckIn{Person: id}, After: done}
	}
	in := func(group string) session.Command { return session.CheckInAs{Person: id, Group: group} }
	return ui.Show{Dialog: groupMenu(c, r.person.Name, in, done)}
}

// GroupMenu asks for the group of somebody, with one key for each of tonight's two.
func GroupMenu(c ui.Context, p session.Person) ui.Dialog {
	change := func(group string) session.Command {
		next := p
		next.Group = group
		return session.ChangePerson{Person: next}
	}
	return dialog.NewMenu(p.Name+": which group?", groupItems(c, change, nil)...)
}

// groupMenu asks for the group of somebody who comes; it can be given later.
func groupMenu(c ui.Context, name string, with func(group string) session.Command, done func(*session.Ledger)) ui.Dialog {
	later := dialog.Item{Key: "0", Label: "not now: no game until then", Intent: ui.Do{Command: with(""), After: done}}
	return dialog.NewMenu(name+": which group?", append(groupItems(c, with, done), later)...)
}

// groupItems are the groups to choose from. Their keys are digits: whoever types the next name already
// chooses none.
func groupItems(c ui.Context, with func(group string) session.Command, done func(*session.Ledger)) []dialog.Item {
	groups := c.Night().GroupChoice(c.Club())
	var items []dialog.Item
	for i, g := range groups {
		items = append(items, dialog.Item{Key: strconv.Itoa(i + 1), Label: g, Intent: ui.Do{Command: with(g), After: done}})
	}
	other := func(v []string) (ui.Intent, error) {
		if strings.TrimSpace(v[0]) == "" {
			return nil, fmt.Errorf("type a word, such as %s", groups[0])
		}
		return ui.Do{Command: with(v[0]), After: done}, nil
	}
	form := dialog.NewForm("Group", other, dialog.Field{Label: "Group", Hint: "the same word for everybody of the group; a night takes two"})
	return append(items, dialog.Item{Key: "3", Label: "another word", Intent: ui.Show{Dialog: form}})
}
