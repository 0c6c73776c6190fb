package ui

import (
	"strings"

	"club/quadrille/session"
	"club/quadrille/session/name"
	"club/quadrille/tui/line"
)

// Names gives the names of people in full and in the shortest form that leaves no doubt among the
// people of a night.
type Names struct {
	full, short map[session.PersonID]string
}

// NewNames works the names out for the newest night.
func NewNames(club *session.Club) *Names {
	n := &Names{full: map[session.PersonID]string{}, short: map[session.PersonID]string{}}
	for _, p := range club.People {
		n.full[p.ID] = p.Name
	}
	var ids []session.PersonID
	if night := club.Night(); night != nil {
		for _, a := range night.Roll {
			ids = append(ids, a.Person)
		}
	}
	n.shorten(ids)
	return n
}

// shorten gives each person the first of three forms that nobody else of the night could have:
// first name, first name and initial, full name.
func (n *Names) shorten(ids []session.PersonID) {
	forms := []func(string) string{name.First, func(full string) string { return name.Initial(full, 1) }}
	seen := make([]map[string]int, len(forms))
	for i, form := range forms {
		seen[i] = map[string]int{}
		for _, id := range ids {
			seen[i][strings.ToLower(form(n.full[id]))]++
		}
	}
	for _, id := range ids {
		n.short[id] = n.full[id]
		for i, form := range forms {
			if text := form(n.full[id]); seen[i][strings.ToLower(text)] == 1 {
				n.short[id] = text
				break
			}
		}
	}
}

// Full is a person's name.
func (n *Names) Full(id session.PersonID) string {
	if name, ok := n.full[id]; ok {
		return name
	}
	return "somebody"
}

// Short is the shortest name that leaves no doubt tonight.
func (n *Names) Short(id session.PersonID) string {
	if name, ok := n.short[id]; ok {
		return name
	}
	return n.Full(id)
}

// Team joins the short names of a side.
func (n *Names) Team(s session.Team) string {
	if s[1] == "" {
		return n.Short(s[0])
	}
	return n.Short(s[0]) + " & " + n.Short(s[1])
}

// FullTeam joins the full names of a side.
func (n *Names) FullTeam(s session.Team) string {
	if s[1] == "" {
		return n.Full(s[0])
	}
	return n.Full(s[0]) + " & " + n.Full(s[1])
}

// FullTeamIn is FullTeam in so many cells, so that neither of the two vanishes behind a long name: where both do not fit, the
// longer name gives way, first to its short form, then to what room is left.
func (n *Names) FullTeamIn(s session.Team, room int) string {
	text := n.FullTeam(s)
	if line.Width(text) <= room || s[1] == "" {
		return line.Cut(text, room)
	}
	names := [2]string{n.Full(s[0]), n.Full(s[1])}
	long := 0
	if line.Width(names[1]) > line.Width(names[0]) {
		long = 1
	}
	names[long] = n.Short(s[long])
	return line.Both(names[0], " & ", names[1], room)
}

// List joins the short names of some people.
func (n *Names) List(ids []session.PersonID) string {
	out := make([]string, len(ids))
	for i, id := range ids {
		out[i] = n.Short(id)
	}
	return strings.Join(out, ", ")
}
