// Package door is the screen at the entrance: it checks people in while a queue waits.
package door

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Door is the check-in screen. Letters search; Enter does the likeliest thing to the person found.
type Door struct {
	input  textinput.Model
	cursor ui.Cursor
	chosen bool             // somebody was chosen with the arrows or the mouse
	stale  bool             // what is typed has had its answer: the next letter begins another name
	told   session.PersonID // who was said to be here already: enter again has the page
	listed listed
}

// New makes the screen.
func New() *Door {
	d := &Door{input: dialog.NewInput()}
	d.input.Focus()
	return d
}

// Typing implements ui.Screen: letters are always part of a name here.
func (d *Door) Typing() bool { return true }

// Actions implements ui.Screen.
func (d *Door) Actions(c ui.Context) []ui.Action {
	rows := d.rows(c)
	verb, unmarked := "check in", ""
	if !d.marks() || len(rows) == 0 {
		unmarked = "type a few letters of a name first, or choose somebody with the arrows"
	}
	at := d.cursor.In(len(rows))
	more := unmarked
	if unmarked == "" {
		verb = rows[at].verb()
		if rows[at].guest != "" {
			more = "a guest has no more choices before coming in: enter adds the guest"
		}
	}
	drop := ui.Act(ui.Bind("drop what is typed", "ctrl+z", "ctrl+z"), func() ui.Intent {
		d.clear()
		return nil
	}).Quietly()
	if d.input.Value() == "" {
		drop.Key.SetKeys() // the desk's undo
	}
	return []ui.Action{
		{Key: ui.Bind("a name", "letters"), Quiet: d.marks()},
		ui.Act(ui.Bind(verb, "enter", "enter"), func() ui.Intent { return d.enter(c, rows[at]) }).Because(unmarked),
		ui.Act(ui.Bind("more", "→", "right"), func() ui.Intent {
			d.stale = true
			return ui.Show{Dialog: personMenu(c, rows[at])}
		}).Because(more),
		d.move(len(rows)),
		drop,
		ui.Ask(ui.Bind("open roster", "ctrl+o", "ctrl+o"), ui.Show{Dialog: ImportForm()}),
	}
}

// move goes through the list. The first arrow down marks the first row.
func (d *Door) move(rows int) ui.Action {
	a := d.cursor.Move(rows)
	move := a.Do
	a.Do = func(key string) ui.Intent {
		if d.marks() || key != "down" {
			move(key)
		}
		d.chosen = true
		return nil
	}
	return a
}

// Type implements ui.Typist: letters are part of a name.
func (d *Door) Type(_ ui.Context, k tea.KeyMsg) (ui.Intent, bool) { return nil, d.typed(k) }

// typed gives a key to the search field, and tells whether it was text.
func (d *Door) typed(k tea.KeyMsg) bool {
	switch k.Type {
	case tea.KeyRunes, tea.KeySpace, tea.KeyBackspace, tea.KeyDelete, tea.KeyCtrlW, tea.KeyCtrlU:
		if d.stale && k.Type == tea.KeyRunes {
			d.input.SetValue("")
		}
		d.input, _ = d.input.Update(k)
		d.cursor, d.chosen, d.stale, d.told = 0, false, false, ""
		return true
	}
	return false
}

func (d *Door) clear() {
	d.input.SetValue("")
	d.cursor, d.chosen, d.stale, d.told = 0, false, false, ""
}

// Leave implements ui.Leaver.
func (d *Door) Leave() { d.clear() }

// marks tells whether a row is marked for enter: after something was typed, or somebody was chosen.
// An enter too many must not check in whoever happens to be first.
func (d *Door) marks() bool { return d.chosen || d.input.Value() != "" }

// enter does the likeliest thing to the row: check in whoever is not here, show the page of whoever is.
// Whoever is here already and was found by typing may be somebody else's namesake: that is asked back and
// not guessed, and enter again shows the page. So a name typed after it begins another search, and is no
// row of keys on a page that nobody looks at.
func (d *Door) enter(c ui.Context, r row) ui.Intent {
	done := func(*session.Ledger) { d.clear() }
	switch {
	case r.guest != "" && asksGroup(c, r):
		add := func(group string) session.Command { return session.AddGuest{Name: r.guest, Group: group} }
		return ui.Show{Dialog: groupMenu(c, r.guest, add, done)}
	case r.guest != "":
		return ui.Do{Command: session.AddGuest{Name: r.guest}, After: done}
	case r.state == session.Here && !d.chosen && d.told != r.person.ID:
		d.stale, d.told = true, r.person.ID
		return ui.Refuse{Err: fmt.Errorf("%s is here already: enter again shows the page; ↓ goes on to “add %s as a guest”", r.person.Name, d.input.Value())}
	case r.state == session.Here:
		d.stale = true
		return ui.ShowPerson{Person: r.person.ID}
	}
	return checkIn(c, r, done)
}

// Click implements ui.Screen: a click selects, a click on what is selected is Enter.
func (d *Door) Click(c ui.Context, _, y int) ui.Intent {
	rows := d.rows(c)
	from, until := line.Window(len(rows), c.Height-listTop, d.cursor.In(len(rows)))
	i := from + y - listTop
	switch {
	case i < from || i >= until:
		return nil
	case d.marks() && i == d.cursor.In(len(rows)):
		return d.enter(c, rows[i])
	}
	d.cursor, d.chosen = ui.Cursor(i), true
	return nil
}

// listTop is the line on which the list of people begins.
const listTop = 2

// Lines implements ui.Screen.
func (d *Door) Lines(c ui.Context) []string {
	const label, least = "Find or add: ", 12 // what is typed must be seen on any terminal
	counts := line.Cut(d.counts(c), c.Width-len(label)-least)
	d.input.Width = max(least-2, min(30, c.Width-len(label)-line.Width(counts)-2))
	left := c.Theme.Strong.Render(label) + d.input.View()
	out := []string{line.Spread(left, counts, c.Width), ""}
	rows := d.rows(c)
	if len(rows) == 0 {
		return append(out, "Nobody is known to the club yet.", "",
			"Type a name and press enter to add the first guest,",
			"or press ctrl+o to open a roster (CSV).")
	}
	cursor := d.cursor.In(len(rows))
	from, until := line.Window(len(rows), c.Height-listTop, cursor)
	width := min(c.Width, 100)
	for i, r := range rows[from:until] {
		text := line.Fit(r.text(c, width-2), width-2)
		if d.marks() && from+i == cursor {
			out = append(out, "> "+c.Theme.Selected.Render(text))
			continue
		}
		out = append(out, "  "+r.style(c).Render(text))
	}
	return out
}

func (d *Door) counts(c ui.Context) string {
	n := c.Night()
	if n == nil {
		return ""
	}
	parts := []string{fmt.Sprintf("%d here", n.Count(session.Here))}
	for _, p := range []session.Presence{session.Resting, session.Expected, session.Gone} {
		if k := n.Count(p); k > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", k, p.Words()))
		}
	}
	return c.Theme.Dim.Render(strings.Join(parts, " · "))
}
