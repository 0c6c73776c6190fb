// Package table is the screen of who leads: tonight's standings with how they came about, the ladder of a ladder
// night, the league over all nights, and the ratings.
package table

import (
	"fmt"
	"strings"

	"club/quadrille/scheduler"
	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// view is one of the tables.
type view int

const (
	first view = iota // the ladder on a ladder night, and else tonight's
	tonight
	league
	ratings
	partners
	ladder
)

// Table is the screen of the tables.
type Table struct {
	view   view
	span   session.Span // of the league and the partners
	cursor ui.Cursor
	facts  facts
}

// sheet is a table ready to be drawn, row by row.
type sheet struct {
	head, empty string
	count       int
	row         func(i int) string
	strong      func(i int) bool   // of the rows that stand out, nil for none
	people      []session.PersonID // whom each row is about, the first of a pair
	note        string             // which games count otherwise; in front of the foot
	about       func(i int) string // of the row under the cursor, in the line below the table; nil for nothing
	foot        string
	beside      func(i int) []string // of the row under the cursor, beside the table; nil for nothing
	width       int                  // of the table, where something stands beside it
}

// New makes the screen.
func New() *Table { return &Table{} }

// Typing implements ui.Screen.
func (t *Table) Typing() bool { return false }

// shown is the view that is shown.
func (t *Table) shown(c ui.Context) view {
	switch {
	case t.view != first:
		return t.view
	case climbs(c):
		return ladder
	}
	return tonight
}

// climbs tells whether the newest night is one of a ladder.
func climbs(c ui.Context) bool {
	n := c.Club().Night()
	return n != nil && n.Settings.Format == scheduler.Ladder
}

// views lists what can be shown, in the order of the key.
func views(c ui.Context) []view {
	if climbs(c) {
		return []view{ladder, tonight, league, ratings, partners}
	}
	return []view{tonight, league, ratings, partners}
}

// turn is the view after the one that is shown.
func (t *Table) turn(c ui.Context) view {
	all, now := views(c), t.shown(c)
	for i, v := range all {
		if v == now {
			return all[(i+1)%len(all)]
		}
	}
	return first
}

// Follow implements ui.Follower: a night without a ladder shows none.
func (t *Table) Follow(*session.Night) {
	if t.view == ladder {
		t.view = first
	}
}

// Click implements ui.Screen: a click selects, a click on what is selected shows the page.
func (t *Table) Click(c ui.Context, x, y int) ui.Intent {
	s := t.sheet(c)
	from, until := line.Window(s.count, s.room(c), t.cursor.In(s.count))
	i := from + y - 1
	switch {
	case i < from || i >= until || s.beside != nil && x >= s.width:
		return nil
	case i == t.cursor.In(s.count) && s.people[i] != "":
		return ui.ShowPerson{Person: s.people[i], Among: s.known()}
	}
	t.cursor = ui.Cursor(i)
	return nil
}

// known lists whom the rows are about, without those whom the club no longer knows.
func (s sheet) known() []session.PersonID {
	var out []session.PersonID
	for _, id := range s.people {
		if id != "" {
			out = append(out, id)
		}
	}
	return out
}

// Actions implements ui.Screen.
func (t *Table) Actions(c ui.Context) []ui.Action {
	names := "tonight, league, ratings, partners"
	if climbs(c) {
		names = "ladder, " + names
	}
	out := []ui.Action{
		ui.Act(ui.Bind("other tables", "v", "v"), func() ui.Intent {
			t.view, t.cursor = t.turn(c), 0
			t.Survey(c)
			return nil
		}).Explained("the next table: " + names),
	}
	if s := t.sheet(c); s.count > 0 {
		at := t.cursor.In(s.count)
		unknown := ""
		if s.people[at] == "" {
			unknown = "the club no longer knows this person"
		}
		out = append(out, t.cursor.Move(s.count), ui.Act(ui.Bind("page", "enter", "enter"), func() ui.Intent {
			return ui.ShowPerson{Person: s.people[at], Among: s.known()}
		}).Because(unknown).Explained("the person's page: the night, sit-outs, whom met, rating"))
	}
	switch t.shown(c) {
	case tonight:
		out = append(out, ui.Ask(ui.Bind("draw lots", "l", "l"), ui.Do{Command: session.DrawLots{}}))
	case partners:
		out = append(out, t.which(c))
	case league:
		out = append(out, t.which(c), ui.Action{Key: ui.Bind("nights that count", "+-", "+", "-"), Ways: []ui.Way{{Key: "+", Label: "one more night counts"}, {Key: "-", Label: "one night less counts"}}, Do: func(key string) ui.Intent {
			by := 1
			if key == "-" {
				by = -1
			}
			return ui.Do{Command: session.ChooseLeague{Best: max(0, c.Club().Best+by)}}
		}})
	}
	return out
}

// footRows are the lines under the table: a blank one and two of explanation, one more where games of the
// night were not played to their end, and one more about the row under the cursor.
func (s sheet) footRows() int {
	rows := 3
	if s.note != "" {
		rows++
	}
	if s.about != nil {
		rows++
	}
	return rows
}

// room is how many rows of a table are shown.
func (s sheet) room(c ui.Context) int { return max(1, c.Height-1-s.footRows()) }

// sheet lays the table out that is shown.
func (t *Table) sheet(c ui.Context) sheet {
	f := &t.facts
	switch t.shown(c) {
	case league:
		return f.leagueSheet(c, c.Club().Best)
	case partners:
		return f.partnerSheet(c)
	case ratings:
		return f.ratingSheet(c)
	case ladder:
		return f.ladderSheet(c)
	}
	return f.tonightSheet(c)
}

// Lines implements ui.Screen.
func (t *Table) Lines(c ui.Context) []string {
	s := t.sheet(c)
	if s.count == 0 {
		return append([]string{""}, line.Wrap(strings.TrimSpace(s.empty+" "+s.note), c.Width)...)
	}
	width := c.Width
	if s.beside != nil {
		width = s.width
	}
	at := t.cursor.In(s.count)
	from, until := line.Window(s.count, s.room(c), at)
	out := []string{c.Theme.Dim.Render(line.Cut(s.head, width))}
	for i := from; i < until; i++ {
		r := line.Cut(s.row(i), width)
		switch {
		case i == at:
			r = c.Theme.Selected.Render(">" + strings.TrimPrefix(r, " "))
		case s.strong != nil && s.strong(i):
			r = c.Theme.Strong.Render(r)
		}
		out = append(out, r)
	}
	for len(out) < c.Height-s.footRows()+1 {
		out = append(out, "")
	}
	out = append(out, s.feet(c, at, until, width)...)
	if s.beside == nil {
		return out
	}
	return line.Beside(out, panel(c, s.beside(at), c.Height), width, 1)
}

// feet are the lines below the table.
func (s sheet) feet(c ui.Context, at, until, width int) []string {
	var out []string
	if s.about != nil {
		out = append(out, line.Cut(" "+s.about(at), width))
	}
	foot := strings.TrimSpace(s.note + " " + s.foot)
	if more := s.count - until; more > 0 {
		foot = plural(more) + " below. " + foot
	}
	for _, text := range line.Wrap(foot, width) {
		if len(out) < s.footRows()-1 {
			out = append(out, c.Theme.Dim.Render(text))
		}
	}
	return out
}

// panel is what stands beside the table, behind a line.
func panel(c ui.Context, lines []string, height int) []string {
	out := make([]string, height)
	for i := range out {
		out[i] = c.Theme.Frame.Render("│")
		if i < len(lines) && lines[i] != "" {
			out[i] += " " + lines[i]
		}
	}
	return out
}

func plural(n int) string {
	if n == 1 {
		return "1 row"
	}
	return fmt.Sprintf("%d rows", n)
}
