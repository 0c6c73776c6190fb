package door

import (
	"fmt"
	"strconv"
	"strings"

	"club/quadrille/session"
	names "club/quadrille/session/name"
	"club/quadrille/tui/courts"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/ui"
)

// personMenu offers all that can be done about one person.
func personMenu(c ui.Context, r row) ui.Dialog {
	id := r.person.ID
	why := func(ok bool, text string) string {
		if ok {
			return ""
		}
		return text
	}
	isHere := r.state == session.Here
	atHall := isHere || r.state == session.Resting
	in := "check in"
	if r.state == session.Resting {
		in = "back to play"
	}
	return dialog.NewMenu(r.person.Name,
		dialog.Item{Key: "i", Label: in, Intent: checkIn(c, r, nil), Why: why(!isHere, r.person.Name+" is here already")},
		dialog.Item{Key: "r", Label: "rest a while", Intent: ui.Do{Command: session.Rest{Person: id}}, Why: why(isHere, r.person.Name+" is not in the rotation")},
		dialog.Item{Key: "l", Label: "leave for tonight", Intent: ui.Do{Command: session.Leave{Person: id}}, Why: why(atHall || r.state == session.Expected, r.person.Name+" is not here")},
		dialog.Item{Key: "h", Label: "hurt: note an injury, or that it is cleared", Intent: ui.Later{Make: func() ui.Intent {
			return ui.Show{Dialog: courts.Injury(c, id)}
		}}, Why: why(r.state != "", r.person.Name+" has no part in tonight")},
		dialog.Item{Key: "t", Label: "set times: comes late, leaves early", Intent: ui.Show{Dialog: TimesForm(c, r.person)}},
		dialog.Item{Key: "p", Label: "page: games, sit-outs, whom met, rating", Intent: ui.ShowPerson{Person: id}},
		dialog.Item{Key: "e", Label: "edit name, level, group, partners", Intent: ui.Show{Dialog: PersonForm(c, r.person)}},
		dialog.Item{Key: "m", Label: "merge: turns out to be somebody else", Intent: ui.Show{Dialog: mergePick(r.person)}},
	)
}

// PartnerLabel is the field of [PersonForm] that names partners.
const PartnerLabel = "Partner with"

// PersonForm edits what the club knows of somebody.
func PersonForm(c ui.Context, p session.Person) *dialog.Form {
	send := func(v []string) (ui.Intent, error) {
		next := p
		next.Name, next.Group = v[0], v[1]
		var err error
		if next.Level, err = session.ParseLevel(v[2]); err != nil {
			return nil, err
		}
		if next.Together, err = parseTogether(c, p, v[3]); err != nil {
			return nil, err
		}
		if next.KeepApart, err = parseNames(c, p, v[4]); err != nil {
			return nil, err
		}
		if next.NotPartner, err = parseNames(c, p, v[5]); err != nil {
			return nil, err
		}
		next.Courts = session.ParseOwnCourts(v[6])
		next.Shown, next.Hidden = v[7], v[8] == hidden
		return ui.Do{Command: session.ChangePerson{Person: next}, After: nil}, nil
	}
	return dialog.NewForm(p.Name, send,
		dialog.Field{Label: "Name", Value: p.Name, Hint: "as people call out for"},
		dialog.Field{Label: "Group", Value: p.Group, Hint: "for mixed rotations: the same word for each of two groups"},
		dialog.Field{Label: "Level", Value: session.LevelText(p.Level), Hint: "your club's own, such as 3.5; empty if you do not use levels"},
		dialog.Field{Label: PartnerLabel, Value: togetherText(c, p), Hint: "names or their first letters, separated by ; for some games only: Name*2"},
		dialog.Field{Label: "Keep apart", Value: namesText(c, p.KeepApart), Hint: "never on one court with these; names, separated by ;"},
		dialog.Field{Label: "Not partner", Value: namesText(c, p.NotPartner), Hint: "never in one team with these, who may be opponents; names, separated by ;"},
		dialog.Field{Label: "Only courts", Value: session.OwnCourtsText(p.Courts), Hint: "plays on no other court, such as 1; 2: for who cannot walk far; empty for any"},
		dialog.Field{Label: "Chosen name", Value: p.Shown, Hint: "on boards, where the club shows the names that people chose (o, n)"},
		dialog.Field{Label: "In the hall", Value: seenText(p), Options: []string{seen, hidden}, Hint: "hidden: boards show “somebody” on court, and no other line"},
	)
}

// How the hall sees somebody.
const (
	seen   = "seen"
	hidden = "hidden"
)

func seenText(p session.Person) string {
	if p.Hidden {
		return hidden
	}
	return seen
}

func togetherText(c ui.Context, p session.Person) string {
	var out []string
	for _, t := range p.Together {
		text := c.Names.Full(t.With)
		if t.Times > 0 {
			text = fmt.Sprintf("%s*%d", text, t.Times)
		}
		out = append(out, text)
	}
	return strings.Join(out, "; ")
}

func namesText(c ui.Context, ids []session.PersonID) string {
	var out []string
	for _, id := range ids {
		out = append(out, c.Names.Full(id))
	}
	return strings.Join(out, "; ")
}

func parseTogether(c ui.Context, p session.Person, text string) ([]session.Together, error) {
	var out []session.Together
	for part := range strings.SplitSeq(text, ";") {
		name, times, limited := strings.Cut(part, "*")
		if strings.TrimSpace(name) == "" {
			continue
		}
		id, err := named(c, p, name)
		if err != nil {
			return nil, err
		}
		t := session.Together{With: id}
		if limited {
			if t.Times, err = strconv.Atoi(strings.TrimSpace(times)); err != nil || t.Times < 1 {
				return nil, fmt.Errorf("write how often as Name*2, not %q", strings.TrimSpace(part))
			}
		}
		out = append(out, t)
	}
	return out, nil
}

func parseNames(c ui.Context, p session.Person, text string) ([]session.PersonID, error) {
	var out []session.PersonID
	for name := range strings.SplitSeq(text, ";") {
		if strings.TrimSpace(name) == "" {
			continue
		}
		id, err := named(c, p, name)
		if err != nil {
			return nil, err
		}
		out = append(out, id)
	}
	return out, nil
}

// fewestLetters is how much of a name must be typed to find somebody by its beginning.
const fewestLetters = 3

// beginning lists whose names begin with what was typed, but for one: of tonight's people, or of all of the club where none of
// those does.
func beginning(c ui.Context, self session.PersonID, text string) []session.Person {
	text = names.Plain(text)
	if len([]rune(text)) < fewestLetters {
		return nil
	}
	var tonight, others []session.Person
	for _, p := range c.Club().People {
		switch {
		case p.ID == self || !strings.HasPrefix(names.Plain(p.Name), text):
		case c.Night() != nil && c.Night().Attending(p.ID) != nil:
			tonight = append(tonight, p)
		default:
			others = append(others, p)
		}
	}
	if len(tonight) > 0 {
		return tonight
	}
	return others
}

// named finds another person of the club by the name that was typed, or by a beginning that only one person has.
func named(c ui.Context, self session.Person, name string) (session.PersonID, error) {
	name = strings.TrimSpace(name)
	p, ok := c.Club().Named(name)
	if !ok {
		switch few := beginning(c, self.ID, name); len(few) {
		case 0:
		case 1:
			p, ok = few[0], true
		default:
			return "", fmt.Errorf("%q can be %s or %s: write more of the name", name, few[0].Name, few[1].Name)
		}
	}
	switch {
	case !ok:
		return "", fmt.Errorf("the club knows nobody called %q: write the whole name", name)
	case p.ID == self.ID:
		return "", fmt.Errorf("that is %s", p.Name)
	}
	return p.ID, nil
}
