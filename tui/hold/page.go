// Package hold is what the screen shows while play is held: so large that whoever walks by sees it, with the
// reason, what to do, who was told, and for lightning the minutes since the last thunder. It ends no hold:
// that is a person's decision, and always asked.
package hold

import (
	"fmt"
	"slices"

	"club/quadrille/session"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/emergency"
	"club/quadrille/tui/ui"
)

// Page takes the whole screen while play is held.
type Page struct {
	undo   ui.Intent
	keys   []string // of the desk's hold, which here ask whether play may go on
	cursor ui.Cursor
}

// New makes the page, with what the desk's undo does and the keys of its hold.
func New(undo ui.Intent, keys []string) *Page { return &Page{undo: undo, keys: keys} }

// Title implements ui.Dialog.
func (*Page) Title() string { return "Play is held" }

// Whole tells that the page wants the whole screen.
func (*Page) Whole() bool { return true }

// Told tells that what was saved last stands on this page too.
func (*Page) Told() bool { return true }

// Stays tells that what is done on the page does not close it.
func (*Page) Stays() bool { return true }

// playing lists the courts whose players must know.
func playing(n *session.Night) []session.Court {
	return slices.DeleteFunc(slices.Clone(n.Courts), func(c session.Court) bool { return c.Game == 0 })
}

// Actions implements ui.Dialog.
func (p *Page) Actions(c ui.Context) []ui.Action {
	back := ui.Ask(ui.Bind("the hall", "esc", "esc"), ui.Close{}).Explained("show the hall under the hold; the hold goes on")
	n := c.Night()
	if n == nil || n.Hold == nil {
		return []ui.Action{back}
	}
	var out []ui.Action
	if n.Hold.Lightning() {
		out = append(out, ui.Ask(ui.Bind("thunder now", "t", "t"), ui.Do{Command: session.HearThunder{}}).
			Explained("thunder was heard or lightning seen: the 30 minutes begin anew"))
	}
	out = append(out, p.courtActions(n)...)
	out = append(out, ui.Ask(ui.Bind("emergency card", "C", "C", "f4"), ui.Show{Dialog: emergency.New(c.Ledger)}).Quietly())
	undo := ui.Ask(ui.Bind("undo", "u", "u", "ctrl+z"), p.undo)
	undo.Quiet = c.Width < 80
	return append(out, undo, ui.Ask(ui.Bind("play may go on", p.keys[0], p.keys...), ui.Show{Dialog: Question(c)}).
		Explained("end the hold, after a question"), back)
}

// courtActions note who was told.
func (p *Page) courtActions(n *session.Night) []ui.Action {
	courts, untold := playing(n), n.Untold()
	if len(courts) == 0 {
		return nil
	}
	told := ui.Act(ui.Bind("told", "enter", "enter", " "), func() ui.Intent {
		at := courts[p.cursor.In(len(courts))].ID
		return ui.Do{Command: session.TellCourts{Courts: []session.CourtID{at}}, After: func(l *session.Ledger) { p.next(l.Night()) }}
	}).Explained("the players of this court know that play is held")
	all := ui.Ask(ui.Bind("all told", "a", "a"), ui.Do{Command: session.TellCourts{Courts: untold}})
	if len(untold) == 0 {
		told, all = told.Because("all courts were told"), all.Because("all courts were told")
	}
	choose := ui.Action{
		Key: ui.Bind("court", "arrows", "left", "right", "up", "down", "home", "end"), Quiet: true,
		Do: func(key string) ui.Intent {
			p.cursor.Press(map[string]string{"left": "up", "right": "down"}[key]+map[string]string{"up": "up", "down": "down", "home": "home", "end": "end"}[key], len(courts))
			return nil
		},
	}
	return []ui.Action{told, all, choose}
}

// next moves the cursor to the next court that was not told.
func (p *Page) next(n *session.Night) {
	if n == nil || n.Hold == nil {
		return
	}
	courts, untold := playing(n), n.Untold()
	for i := range courts {
		at := (p.cursor.In(len(courts)) + 1 + i) % len(courts)
		if slices.Contains(untold, courts[at].ID) {
			p.cursor = ui.Cursor(at)
			return
		}
	}
}

// Question asks whether play may go on. The program never answers it.
func Question(c ui.Context) *dialog.Menu {
	note := "Whoever decides for your venue says so, by its own rules."
	if h := c.Night().Hold; h.Lightning() {
		note = "30 minutes without thunder are over. " + note
		if left := h.ThunderLeft(c.Now); left > 0 {
			note = fmt.Sprintf("Only %d of 30 minutes are over since the last thunder. Whoever decides for your venue says so, by its own rules.", passed(h, c))
		}
	}
	return dialog.NewMenu("May play go on?",
		dialog.Item{Key: "y", Label: "play may go on", Intent: ui.Do{Command: session.ResumePlay{}}},
		dialog.Item{Key: "s", Label: "stay on hold", Intent: ui.Close{}},
	).Noting(note)
}
