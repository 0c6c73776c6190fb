// Package calling is the page to read the newest call aloud from, court by court, in full names and large.
// What was read is marked, so that whoever is interrupted goes on where the reading stopped.
package calling

import (
	"fmt"
	"slices"

	"club/quadrille/session"
	"club/quadrille/session/calling"
	"club/quadrille/tui/courts"
	"club/quadrille/tui/ui"
)

// Page is the page of the newest call.
//
// Its marks are kept as long as the desk runs and the call stands, and are no events: they say how far somebody
// has read, which is nothing that the night depends on, and an undo would take back a mark in place of the call.
type Page struct {
	list   calling.List
	read   map[calling.Call]bool
	chosen session.GameID // under the cursor, 0 for the first that was not read
}

// New makes the page.
func New() *Page { return &Page{read: map[calling.Call]bool{}} }

// Typing implements ui.Screen.
func (p *Page) Typing() bool { return false }

// Survey implements ui.Surveyor.
func (p *Page) Survey(c ui.Context) { p.list = List(c) }

// List is what there is to read out.
func List(c ui.Context) calling.List {
	var ahead []session.PlannedRound
	if c.Rotation.Ready && c.Rotation.Err == nil {
		ahead = c.Rotation.Rounds
	}
	return calling.Of(c.Night(), ahead, c.Now)
}

// Left are the games of a list that were not read.
func (p *Page) Left(l calling.List) []calling.Call {
	return slices.DeleteFunc(slices.Clone(l.Calls), func(g calling.Call) bool { return p.read[g] })
}

// at is the index of what the cursor is on: what was chosen, else the first that was not read.
func (p *Page) at() int {
	first := -1
	for i, g := range p.list.Calls {
		if g.Game == p.chosen {
			return i
		}
		if first < 0 && !p.read[g] {
			first = i
		}
	}
	return max(0, first)
}

// Actions implements ui.Screen.
func (p *Page) Actions(c ui.Context) []ui.Action {
	back := ui.Ask(ui.Bind("back", "esc", "esc"), ui.Back{}).Explained("back; what was read stays marked as long as the call stands")
	if len(p.list.Calls) == 0 {
		return []ui.Action{back}
	}
	at := p.at()
	now := p.list.Calls[at]
	again := ""
	if !p.read[now] {
		again = fmt.Sprintf("court %s was not read yet", now.Court)
	}
	read := ui.Act(ui.Bind("read", "space", " ", "enter"), func() ui.Intent { return p.mark(at) }).
		Explained("this court is read out: the next one that is not comes up; after the last one, back")
	missing := ui.Act(ui.Bind("missing?", "x", "x"), func() ui.Intent {
		return ui.Show{Dialog: courts.NoShow(c, c.Night().Game(now.Game))}
	}).Explained("somebody does not come: a sub from the bench, a walkover, or wait")
	if g := c.Night().Game(now.Game); g != nil && len(g.Rallies) > 0 {
		missing.Why = fmt.Sprintf("play has begun on court %s", now.Court)
	}
	return []ui.Action{
		read, missing, p.move(at),
		ui.Act(ui.Bind("not read", "bksp", "backspace"), func() ui.Intent {
			delete(p.read, now)
			return nil
		}).Because(again).Explained("take the mark away: the court must be read again"),
		back,
	}
}

// mark marks a court as read and goes on to the next one that is not; from the last one it goes back.
func (p *Page) mark(at int) ui.Intent {
	p.read[p.list.Calls[at]] = true
	p.chosen = 0
	for k := 1; k < len(p.list.Calls); k++ {
		if next := p.list.Calls[(at+k)%len(p.list.Calls)]; !p.read[next] {
			p.chosen = next.Game
			return nil
		}
	}
	return ui.Back{}
}

// move chooses a court.
func (p *Page) move(at int) ui.Action {
	cursor := ui.Cursor(at)
	a := cursor.Move(len(p.list.Calls))
	step := a.Do
	a.Do = func(key string) ui.Intent {
		step(key)
		p.chosen = p.list.Calls[cursor.In(len(p.list.Calls))].Game
		return nil
	}
	return a
}

// Leave implements ui.Leaver: the next time the page begins with what was not read.
func (p *Page) Leave() { p.chosen = 0 }

// Follow implements ui.Follower: marks of calls that do not stand any more are forgotten.
func (p *Page) Follow(n *session.Night) {
	for m := range p.read {
		if n == nil || n.Game(m.Game) == nil || n.Game(m.Game).Call != m.Action {
			delete(p.read, m)
		}
	}
}

// Next implements ui.Adviser.
func (p *Page) Next(ui.Context) (string, bool) {
	if len(p.list.Calls) == 0 {
		return "", false
	}
	if len(p.Left(p.list)) == 0 {
		return "all is read out: esc goes back", true
	}
	return fmt.Sprintf("read court %s aloud, then press space; x if somebody does not come", p.list.Calls[p.at()].Court), true
}
