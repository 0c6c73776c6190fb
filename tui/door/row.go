package door

import (
	"cmp"
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
	turns  session.Turns
	sortBy string
	guest  string
}

// listed is a list of rows with what it was made from: a key press asks for it several times.
type listed struct {
	known known
	typed string
	rows  []row
}

// known is everybody whom the club knows, in the order of the list, worked out once for a ledger.
type known struct {
	ledger *session.Ledger
	rows   []row
	names  ui.Index
}

// rows lists who matches what is typed. With nothing typed, those come first who are still to be
// checked in.
func (d *Door) rows(c ui.Context) []row {
	typed := d.input.Value()
	fresh := d.listed.known.ledger == c.Ledger
	if !fresh {
		d.listed.known = everybody(c)
	}
	if !fresh || d.listed.typed != typed {
		d.listed.typed, d.listed.rows = typed, d.match(c)
	}
	return d.listed.rows
}

// everybody lists all whom the club knows.
func everybody(c ui.Context) known {
	k := known{ledger: c.Ledger}
	var turns map[session.PersonID]session.Turns
	if n := c.Night(); n != nil {
		turns = n.TurnsOfAll()
	}
	for _, p := range c.Club().People {
		r := row{person: p, sortBy: strings.ToLower(p.Name), turns: turns[p.ID]}
		if n := c.Night(); n != nil {
			if a := n.Attending(p.ID); a != nil {
				r.state, r.att = a.State, *a
			}
		}
		k.rows = append(k.rows, r)
	}
	slices.SortStableFunc(k.rows, func(a, b row) int {
		return cmp.Or(a.order()-b.order(), strings.Compare(a.sortBy, b.sortBy))
	})
	names := make([]string, len(k.rows))
	for i, r := range k.rows {
		names[i] = r.person.Name
	}
	k.names = ui.NewIndex(names)
	return k
}

// match works the rows out.
func (d *Door) match(c ui.Context) []row {
	typed := session.CleanText(d.input.Value(), longestLine) // a name that is too long is refused, and not cut
	var out []row
	for _, i := range d.listed.known.names.Search(typed) {
		out = append(out, d.listed.known.rows[i])
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
// colour: [x] here, [~] resting, [-] left, [ ] not here yet.
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
		mark, note = "[-]", "left"
		if _, out := c.Night().OutForTonight(r.person.ID); out {
			note = "out for tonight"
		}
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
	games, had := "", r.turns
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
