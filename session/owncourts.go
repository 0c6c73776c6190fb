package session

import (
	"fmt"
	"slices"
	"strings"

	"club/quadrille/scheduler"
)

// bound lists the courts of the night that are the only ones somebody plays on who is here or still to come.
func (n *Night) bound(club *Club) []CourtID {
	var out []CourtID
	for _, a := range n.Roll {
		if p, _ := club.Person(a.Person); a.State != Gone {
			out = append(out, n.ownCourts(p)...)
		}
	}
	return out
}

// ownCourts are the only courts of the night that a person plays on. They are none for somebody who plays on any, and
// where the night has none of those that the person plays on: at another venue courts have other names.
func (n *Night) ownCourts(p Person) []CourtID {
	var out []CourtID
	for _, own := range p.Courts {
		if i := slices.IndexFunc(n.Courts, func(c Court) bool { return strings.EqualFold(string(c.ID), string(own)) }); i >= 0 {
			out = append(out, n.Courts[i].ID)
		}
	}
	return out
}

// bind tells the scheduler who plays only on some courts.
func (d *draw) bind() {
	for i, id := range d.people {
		p, _ := d.club.Person(id)
		for _, own := range d.night.ownCourts(p) {
			if c := slices.Index(d.courts, own); c >= 0 {
				d.problem.People[i].Courts = append(d.problem.People[i].Courts, scheduler.Court(c))
			}
		}
	}
}

// unbound says of whom the courts are not known that are the only ones they play on.
func (d *draw) unbound() []string {
	var out []string
	for _, id := range d.people {
		if p, _ := d.club.Person(id); len(p.Courts) > 0 && len(d.night.ownCourts(p)) == 0 {
			out = append(out, fmt.Sprintf("%s plays only on %s, which is no court tonight: any court will do", p.Name, CourtNames(p.Courts)))
		}
	}
	return out
}

// OwnCourtsText are the only courts of somebody as they are typed and as a roster has them: "1; Centre".
func OwnCourtsText(courts []CourtID) string {
	names := make([]string, len(courts))
	for i, id := range courts {
		names[i] = string(id)
	}
	return strings.Join(names, "; ")
}

// ParseOwnCourts reads what [OwnCourtsText] writes, with commas too.
func ParseOwnCourts(text string) []CourtID {
	var out []CourtID
	for _, part := range splitCourts(text) {
		if id := cleanCourt(CourtID(part)); id != "" {
			out = append(out, id)
		}
	}
	return out
}

// CourtNames are courts as people say and type them: "court 1", "courts 1 and Centre".
func CourtNames(courts []CourtID) string {
	names := make([]string, len(courts))
	for i, id := range courts {
		names[i] = string(id)
	}
	if last := len(names) - 1; last > 0 {
		return "courts " + strings.Join(names[:last], ", ") + " and " + names[last]
	}
	return "court " + strings.Join(names, "")
}
