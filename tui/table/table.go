// Package table is the screen of who leads: tonight's standings, the league over all nights, and
// the ratings.
package table

import (
	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

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
	view view
	top  int
	best int // nights that count for the league, 0 for all

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
	foot        string
}

// New makes the screen.
func New() *Table { return &Table{} }

// Typing implements ui.Screen.
func (t *Table) Typing() bool { return false }

// Click implements ui.Screen.
func (t *Table) Click(ui.Context, int, int) ui.Intent { return nil }

// Press implements ui.Screen.
func (t *Table) Press(c ui.Context, k tea.KeyMsg) (ui.Intent, bool) {
	switch text := k.String(); {
	case text == "v":
		t.view, t.top = (t.view+1)%viewCount, 0
	case text == "l" && t.view == tonight:
		return ui.Do{Command: session.DrawLots{}}, true
	case text == "+" && t.view == league:
		t.best++
	case text == "-" && t.view == league:
		t.best = max(0, t.best-1)
	default:
		return nil, t.scroll(c, text)
	}
	return nil, true
}

// scroll moves the table and tells whether the key was about that.
func (t *Table) scroll(c ui.Context, key string) bool {
	by, ok := map[string]int{"up": -1, "down": 1, "pgup": -room(c), "pgdown": room(c), " ": room(c)}[key]
	if ok {
		last := max(0, len(t.sheet(c).rows)-room(c))
		t.top = max(0, min(last, t.top)+by)
		t.top = min(last, t.top)
	}
	return ok
}

// footRows are the lines under the table: a blank one and two of explanation.
const footRows = 3

// room is how many rows of a table are shown.
func room(c ui.Context) int { return max(1, c.Height-1-footRows) }

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
		return []string{"", s.empty}
	}
	from := min(t.top, max(0, len(s.rows)-room(c)))
	until := min(len(s.rows), from+room(c))
	out := []string{c.Theme.Dim.Render(line.Cut(s.head, c.Width))}
	for _, r := range s.rows[from:until] {
		out = append(out, line.Cut(r, c.Width))
	}
	for len(out) < c.Height-footRows+1 {
		out = append(out, "")
	}
	if more := len(s.rows) - until; more > 0 {
		s.foot = plural(more) + " below. " + s.foot
	}
	for i, text := range line.Wrap(s.foot, c.Width) {
		if i < footRows-1 {
			out = append(out, c.Theme.Dim.Render(text))
		}
	}
	return out
}

// Keys implements ui.Screen.
func (t *Table) Keys(ui.Context) []key.Binding {
	keys := []key.Binding{
		ui.Bind("tonight, league, ratings", "v", "v"),
		ui.Bind("scroll", "↑↓", "up", "down"),
	}
	switch t.view {
	case tonight:
		keys = append(keys, ui.Bind("draw lots", "l", "l"))
	case league:
		keys = append(keys, ui.Bind("nights that count", "+-", "+", "-"))
	}
	return keys
}
