// Package table is the screen of who leads: tonight's standings, the league over all nights, and
// the ratings.
package table

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// view is one of the tables.
type view int

const (
	tonight view = iota
	league
	ratings
	viewCount
)

// Table is the screen of the tables.
type Table struct {
	view   view
	cursor ui.Cursor
	best   int // nights that count for the league, 0 for all

	made  sheet // the table as it was last worked out, since a season of ratings takes time
	basis basis // what it was worked out from
}

// basis is everything that a table depends on.
type basis struct {
	ledger *session.Ledger
	view   view
	best   int
	width  int
}

// sheet is a table ready to be drawn.
type sheet struct {
	head, empty string
	rows        []string
	people      []session.PersonID // whom each row is about, the first of a pair
	note        string             // which games count otherwise; in front of the foot
	foot        string
}

// New makes the screen.
func New() *Table { return &Table{} }

// Typing implements ui.Screen.
func (t *Table) Typing() bool { return false }

// Click implements ui.Screen: a click selects, a click on what is selected shows the page.
func (t *Table) Click(c ui.Context, _, y int) ui.Intent {
	s := t.sheet(c)
	from, until := line.Window(len(s.rows), s.room(c), t.cursor.In(len(s.rows)))
	i := from + y - 1
	switch {
	case i < from || i >= until:
		return nil
	case i == t.cursor.In(len(s.rows)) && s.people[i] != "":
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
	out := []ui.Action{
		ui.Act(ui.Bind("tonight, league, ratings", "v", "v"), func() ui.Intent {
			t.view, t.cursor = (t.view+1)%viewCount, 0
			return nil
		}),
	}
	if s := t.sheet(c); len(s.rows) > 0 {
		at := t.cursor.In(len(s.rows))
		unknown := ""
		if s.people[at] == "" {
			unknown = "the club no longer knows this person"
		}
		out = append(out, t.cursor.Move(len(s.rows)), ui.Act(ui.Bind("page", "enter", "enter"), func() ui.Intent {
			return ui.ShowPerson{Person: s.people[at], Among: s.known()}
		}).Because(unknown).Explained("the person's page: the night, sit-outs, whom met, rating"))
	}
	switch t.view {
	case tonight:
		out = append(out, ui.Ask(ui.Bind("draw lots", "l", "l"), ui.Do{Command: session.DrawLots{}}))
	case league:
		out = append(out, ui.Action{Key: ui.Bind("nights that count", "+-", "+", "-"), Ways: []ui.Way{{Key: "+", Label: "one more night counts"}, {Key: "-", Label: "one night less counts"}}, Do: func(key string) ui.Intent {
			by := 1
			if key == "-" {
				by = -1
			}
			t.best = max(0, t.best+by)
			return nil
		}})
	}
	return out
}

// footRows are the lines under the table: a blank one and two of explanation, or three where games of the
// night were not played to their end.
func (s sheet) footRows() int {
	if s.note != "" {
		return 4
	}
	return 3
}

// room is how many rows of a table are shown.
func (s sheet) room(c ui.Context) int { return max(1, c.Height-1-s.footRows()) }

func (t *Table) sheet(c ui.Context) sheet {
	now := basis{c.Ledger, t.view, t.best, c.Width}
	if now == t.basis {
		return t.made
	}
	t.basis = now
	switch t.view {
	case league:
		t.made = leagueSheet(c, t.best)
	case ratings:
		t.made = ratingSheet(c)
	default:
		t.made = tonightSheet(c)
	}
	return t.made
}

// Lines implements ui.Screen.
func (t *Table) Lines(c ui.Context) []string {
	s := t.sheet(c)
	if len(s.rows) == 0 {
		return append([]string{""}, line.Wrap(strings.TrimSpace(s.empty+" "+s.note), c.Width)...)
	}
	at := t.cursor.In(len(s.rows))
	from, until := line.Window(len(s.rows), s.room(c), at)
	out := []string{c.Theme.Dim.Render(line.Cut(s.head, c.Width))}
	for i, r := range s.rows[from:until] {
		if from+i == at {
			r = c.Theme.Selected.Render(">" + strings.TrimPrefix(ansi.Strip(r), " "))
		}
		out = append(out, line.Cut(r, c.Width))
	}
	for len(out) < c.Height-s.footRows()+1 {
		out = append(out, "")
	}
	foot := strings.TrimSpace(s.note + " " + s.foot)
	if more := len(s.rows) - until; more > 0 {
		foot = plural(more) + " below. " + foot
	}
	for i, text := range line.Wrap(foot, c.Width) {
		if i < s.footRows()-1 {
			out = append(out, c.Theme.Dim.Render(text))
		}
	}
	return out
}
