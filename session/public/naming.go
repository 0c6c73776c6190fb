package public

import (
	"fmt"
	"slices"
	"strings"

	"club/quadrille/session"
	"club/quadrille/session/name"
)

// names are how the people of a night are called. Who is hidden has none.
type names map[session.PersonID]string

// namesOf calls everybody of the night as the club wants it, and says more of people as long as two would
// read alike; where nothing more can be said, a number tells them apart.
func namesOf(club *session.Club, n *session.Night) names {
	forms, at := map[session.PersonID][]string{}, map[session.PersonID]int{}
	var ids []session.PersonID
	for _, a := range n.Roll {
		p, ok := club.Person(a.Person)
		if ok && !p.Hidden {
			ids = append(ids, p.ID)
			forms[p.ID] = formsOf(p, club.Naming)
		}
	}
	for said := true; said; {
		said = false
		like := map[string]int{}
		for _, id := range ids {
			like[reading(forms[id][at[id]])]++
		}
		for _, id := range ids {
			if like[reading(forms[id][at[id]])] > 1 && at[id] < len(forms[id])-1 {
				at[id]++
				said = true
			}
		}
	}
	out, taken := names{}, map[string]bool{reading(Somebody): true}
	for _, id := range ids {
		text := forms[id][at[id]]
		for i := 2; taken[reading(text)]; i++ {
			text = fmt.Sprintf("%s (%d)", forms[id][at[id]], i)
		}
		taken[reading(text)] = true
		out[id] = text
	}
	return out
}

// formsOf are the names that a person may be called by, the shortest first.
func formsOf(p session.Person, naming session.Naming) []string {
	switch {
	case naming == session.InFull:
		return []string{p.Name}
	case naming == session.AsChosen && p.Shown != "":
		return []string{p.Shown}
	}
	out := []string{name.Initial(p.Name, 1)}
	for letters := 2; ; letters++ {
		text := name.Initial(p.Name, letters)
		if text == out[len(out)-1] {
			break
		}
		out = append(out, text)
	}
	return slices.Compact(append(out, p.Name))
}

// reading is the same for two names that look the same from afar, where neither case, accents nor full
// stops count.
func reading(text string) string {
	return strings.Join(strings.Fields(name.Plain(strings.ReplaceAll(text, ".", ""))), " ")
}

// team are the names of a team.
func (n names) team(t session.Team) []string {
	var out []string
	for _, id := range t {
		if id != "" {
			out = append(out, n.player(id))
		}
	}
	return out
}

// player is how somebody on a court is called.
func (n names) player(id session.PersonID) string {
	if text, ok := n[id]; ok {
		return text
	}
	return Somebody
}

// list are the names of people, without those who are hidden.
func (n names) list(ids []session.PersonID) []string {
	var out []string
	for _, id := range ids {
		if text, ok := n[id]; ok {
			out = append(out, text)
		}
	}
	return out
}
