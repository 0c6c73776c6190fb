package door

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// row is one line of the list: a person, or the offer to add a guest of the typed name.
type row struct {
	person session.Person
	state  session.Presence // empty for people with no part in the night
	att    session.Attendance
	guest  string
}

// listed is a list of rows with what it was made from: a key press asks for it several times.
type listed struct {
	ledger *session.Ledger
	typed  string
	rows   []row
}

// rows lists who matches what is typed. With nothing typed, those come first who are still to be
// checked in.
func (d *Door) rows(c ui.Context) []row {
	if typed := d.input.Value(); d.listed.ledger != c.Ledger || d.listed.typed != typed {
		d.listed = listed{c.Ledger, typed, d.match(c)}
	}
	return d.listed.rows
}

// match works the rows out.
func (d *Door) match(c ui.Context) []row {
	var all []row
	for _, p := range c.Club().People {
		r := row{person: p}
		if n := c.Night(); n != nil {
			if a := n.Attending(p.ID); a != nil {
				r.state, r.att = a.State, *a
			}
		}
		all = append(all, r)
	}
	slices.SortStableFunc(all, func(a, b row) int {
		if byState := a.order() - b.order(); byState != 0 {
			return byState
		}
		return strings.Compare(strings.ToLower(a.person.Name), strings.ToLower(b.person.Name))
	})
	names := make([]string, len(all))
	for i, r := range all {
		names[i] = r.person.Name
	}
	typed := session.CleanText(d.input.Value(), longestLine) // a name that is too long is refused, and not cut
	var out []row
	for _, i := range ui.Search(typed, names) {
		out = append(out, all[i])
	}
	if _, known := c.Club().Named(typed); typed != "" && !known {
		out = append(out, row{guest: typed})
	}
	return out
}

// longestLine is more than the field takes, in cells.
const longestLine = 500

func (r row) order() int {
	switch r.state {
	case session.Expected:
		return 0
	case session.Here:
		return 2
	case session.Resting:
		return 3
	case session.Gone:
		return 4
	}
	return 1
}

// text says who it is and where the person stands tonight. The mark in front says it without
// colour: [x] here, [~] resting, [-] gone, [ ] not here yet.
func (r row) text(c ui.Context, width int) string {
	if r.guest != "" {
		return fmt.Sprintf("[+] add %q as a guest", r.guest)
	}
	mark, note := "[ ]", ""
	switch r.state {
	case session.Expected:
		note = "expected"
		switch {
		case r.att.From > 0:
			note += fmt.Sprintf(" for round %d", r.att.From)
		case !r.att.Due.IsZero():
			note += " " + r.att.Due.In(c.Now.Location()).Format("15:04")
		}
		if c.Night().Late(r.att, c.Now) {
			note += ", late"
		}
	case session.Here:
		mark, note = "[x]", here(c, r)
	case session.Resting:
		mark, note = "[~]", "resting"
	case session.Gone:
		mark, note = "[-]", "gone"
	}
	switch {
	case r.state == session.Gone:
	case r.att.Last > 0:
		note += fmt.Sprintf(", leaves after round %d", r.att.Last)
	case !r.att.Leaves.IsZero():
		note += ", leaves " + r.att.Leaves.In(c.Now.Location()).Format("15:04")
	}
	return line.Spread(mark+" "+r.person.Name+level(r.person), note, width)
}

func level(p session.Person) string {
	var parts []string
	if p.Level > 0 {
		parts = append(parts, fmt.Sprintf("level %g", p.Level))
	}
	if p.Group != "" {
		parts = append(parts, "group "+p.Group)
	}
	if len(parts) == 0 {
		return ""
	}
	return "  (" + strings.Join(parts, ", ") + ")"
}

// here says what somebody who is checked in does now.
func here(c ui.Context, r row) string {
	n := c.Night()
	games, had := "", n.TurnsOf(r.person.ID)
	if had.Games > 0 {
		games = fmt.Sprintf(", %d games", had.Games)
		if had.Games == 1 {
			games = ", 1 game"
		}
	}
	if also := had.Also(); also != "" {
		games += ", " + also
	}
	if g := n.Playing(r.person.ID); g != nil {
		return "court " + string(g.Court) + games
	}
	return "here" + games
}

func (r row) style(c ui.Context) lipgloss.Style {
	switch {
	case r.state == session.Gone:
		return c.Theme.Dim
	case r.state == session.Here:
		return c.Theme.Good
	case r.state == session.Expected && c.Night().Late(r.att, c.Now):
		return c.Theme.Warn
	}
	return c.Theme.Tab
}

// verb is what enter does to the row.
func (r row) verb() string {
	switch {
	case r.guest != "":
		return "add guest"
	case r.state == session.Here:
		return "page"
	case r.state == session.Resting:
		return "back to play"
	}
	return "check in"
}
