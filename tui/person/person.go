// Package person is the page of one person: where the person is and what comes next, the night so far, who was
// met, what everybody has had beside it, the rating, and what the person wishes.
package person

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/courts"
	"club/quadrille/tui/door"
	"club/quadrille/tui/hand"
	"club/quadrille/tui/ui"
)

// Page is the screen of one person.
type Page struct {
	id     session.PersonID
	among  []session.PersonID // whom the arrows go through, nil for everybody by name
	facts  facts
	tables tables
}

// New makes the screen.
func New() *Page { return &Page{} }

// Show makes it the page of somebody, in a row of others.
func (p *Page) Show(id session.PersonID, among []session.PersonID) { p.id, p.among = id, among }

// Shown is whose page it is, and the row of others.
func (p *Page) Shown() (id session.PersonID, among []session.PersonID) { return p.id, p.among }

// Typing implements ui.Screen.
func (p *Page) Typing() bool { return false }

// Click implements ui.Screen.
func (p *Page) Click(ui.Context, int, int) ui.Intent { return nil }

// Actions implements ui.Screen.
func (p *Page) Actions(c ui.Context) []ui.Action {
	back := ui.Ask(ui.Bind("back", "esc", "esc"), ui.Back{}).Explained("back to where the page was opened")
	if !p.facts.known {
		return []ui.Action{back}
	}
	who, n := p.facts.person, c.Night()
	closed := ""
	if n == nil {
		closed = session.ErrNoNight.Error()
	}
	state := session.Presence("")
	if n != nil {
		if a := n.Attending(who.ID); a != nil {
			state = a.State
		}
	}
	gone := closed
	if gone == "" && (state == "" || state == session.Gone) {
		gone = who.Name + " is not here"
	}
	absent := closed
	if absent == "" && state == "" {
		absent = who.Name + " has no part in tonight"
	}
	others := p.row(c)
	alone := ""
	if len(others) < 2 {
		alone = "nobody else is in this list"
	}
	return []ui.Action{
		back,
		{Key: ui.Bind("next person", "↑↓", "down", "right", "up", "left", "home", "end"), Why: alone, Do: func(key string) ui.Intent {
			p.turn(c, others, key)
			return p.ask(c)
		}, About: "the next person and the one before; home and end all the way"},
		ui.Act(ui.Bind(toggleVerb(state), "space", " "), func() ui.Intent { return toggle(c, who, state) }).Because(closed),
		ui.Ask(ui.Bind("leave", "l", "l"), ui.Do{Command: session.Leave{Person: who.ID}}).Because(gone).Explained("leave for tonight"),
		ui.Act(ui.Bind("put first", "p", "p"), func() ui.Intent { return hand.First(who.ID) }).Because(gone).
			Explained("by the organiser's decision this person plays next; what it costs is shown before, and history notes it"),
		ui.Act(ui.Bind("injury", "i", "i"), func() ui.Intent { return ui.Show{Dialog: courts.Injury(c, who.ID)} }).Because(absent).
			Explained("somebody is hurt: note it, and stop the game; or let back whom a qualified person has cleared"),
		ui.Act(ui.Bind("wishes", "w", "w"), func() ui.Intent { return ui.Show{Dialog: wishMenu(c, who)} }),
		ui.Act(ui.Bind("times", "t", "t"), func() ui.Intent { return ui.Show{Dialog: door.TimesForm(c, who)} }).Because(closed),
		ui.Act(ui.Bind("record", "m", "m"), func() ui.Intent { return ui.Show{Dialog: record(c, who)} }).
			Explained("with and against whom, on all nights of the club: games, share won and its 95 % range"),
		ui.Act(ui.Bind("edit", "e", "e"), func() ui.Intent { return ui.Show{Dialog: door.PersonForm(c, who)} }),
		ui.Act(ui.Bind("there", "enter", "enter"), func() ui.Intent { return there(n, who.ID) }).Because(gone).
			Explained("go to the court where the person plays, or to the bench"),
	}
}

// toggleVerb is what space does for somebody.
func toggleVerb(state session.Presence) string {
	switch state {
	case session.Here:
		return "rest"
	case session.Resting:
		return "back"
	}
	return "check in"
}

func toggle(c ui.Context, who session.Person, state session.Presence) ui.Intent {
	if state == session.Here {
		return ui.Do{Command: session.Rest{Person: who.ID}}
	}
	return door.CheckIn(c, who)
}

// there goes where somebody is.
func there(n *session.Night, id session.PersonID) ui.Intent {
	if g := n.Playing(id); g != nil {
		return ui.GoCourt{Court: g.Court}
	}
	return ui.Go{To: ui.Bench}
}

// row is whom the arrows go through.
func (p *Page) row(c ui.Context) []session.PersonID {
	if p.among != nil {
		return p.among
	}
	var out []session.PersonID
	if n := c.Club().Night(); n != nil {
		for _, a := range n.Roll {
			out = append(out, a.Person)
		}
	}
	slices.SortStableFunc(out, func(a, b session.PersonID) int {
		return strings.Compare(strings.ToLower(c.Names.Full(a)), strings.ToLower(c.Names.Full(b)))
	})
	return out
}

// turn shows the next person of a row, or another one.
func (p *Page) turn(c ui.Context, row []session.PersonID, key string) {
	at := slices.Index(row, p.id)
	switch key {
	case "home":
		at = 0
	case "end":
		at = len(row) - 1
	case "down", "right":
		at = (at + 1) % len(row)
	default:
		at = (max(at, 0) + len(row) - 1) % len(row)
	}
	p.id = row[at]
	p.survey(c)
}

// ask lets it be worked out beside the screen why the person is not called next: that takes longer than a key may.
func (p *Page) ask(c ui.Context) ui.Intent {
	id := p.id
	return ui.Own{Do: func() tea.Cmd {
		return func() tea.Msg {
			why := whyNotNext(c, id)
			return ui.Worked{Take: func() {
				if p.id == id && p.tables.of == c.Ledger {
					p.facts.told(why)
				}
			}}
		}
	}}
}

// place says which of a row the page is, such as 3 of 37.
func (p *Page) place(c ui.Context) string {
	row := p.row(c)
	if at := slices.Index(row, p.id); at >= 0 && len(row) > 1 {
		return fmt.Sprintf("%d of %d", at+1, len(row))
	}
	return ""
}
