package door

import (
	"slices"

	"club/quadrille/session"
	"club/quadrille/session/name"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// mergePick asks whom a person turned out to be, whose name may be nearly the same: those come first.
func mergePick(p session.Person) ui.Dialog {
	people := func(c ui.Context) []dialog.Candidate {
		var near, others []dialog.Candidate
		for _, other := range c.Club().People {
			switch {
			case other.ID == p.ID:
			case name.Alike(other.Name, p.Name):
				near = append(near, dialog.Candidate{ID: other.ID, Note: "nearly the same name"})
			default:
				others = append(others, dialog.Candidate{ID: other.ID})
			}
		}
		return slices.Concat(near, others)
	}
	merge := func(into session.PersonID) ui.Intent {
		return ui.Do{Command: session.MergePeople{From: p.ID, Into: into}}
	}
	return dialog.NewPick(p.Name+" is really…", "merge", people, merge)
}
