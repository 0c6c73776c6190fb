package palette

import (
	"errors"
	"fmt"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Palette finds an entry by typing a few letters of it.
type Palette struct {
	entries []Entry
	found   []int // of entries, in the order in which they are shown
	input   textinput.Model
	cursor  ui.Cursor
}

// New makes a palette of entries, in the order to show them in while nothing is typed.
func New(entries []Entry) *Palette {
	p := &Palette{input: dialog.NewInput()}
	p.input.Focus()
	p.Renew(entries)
	return p
}

// Renew takes the entries of a state that has changed; what is typed stays.
func (p *Palette) Renew(entries []Entry) {
	p.entries = entries
	p.look()
}

// look finds what is typed. Entries are made ready with the first letter, since opening the box is what most people wait
// for.
func (p *Palette) look() {
	if p.input.Value() != "" {
		Ready(p.entries)
	}
	p.found = Find(p.input.Value(), p.entries)
}

// Title implements ui.Dialog.
func (*Palette) Title() string { return "Do" }

// TakesText tells that letters are text here and choose nothing.
func (*Palette) TakesText() bool { return true }

// chosen is the entry that enter takes, false when nothing is found.
func (p *Palette) chosen() (Entry, bool) {
	if len(p.found) == 0 {
		return Entry{}, false
	}
	return p.entries[p.found[p.cursor.In(len(p.found))]], true
}

// Actions implements ui.Dialog.
func (p *Palette) Actions(ui.Context) []ui.Action {
	return []ui.Action{
		{Key: ui.Bind("find", "letters")},
		ui.Act(ui.Bind("do it", "enter", "enter"), p.take),
		p.cursor.Move(len(p.found)),
		ui.Ask(ui.Bind("back", "esc", "esc", "ctrl+k"), ui.Close{}),
	}
}

func (p *Palette) take() ui.Intent {
	e, ok := p.chosen()
	switch {
	case !ok:
		return ui.Refuse{Err: fmt.Errorf("nothing here is called %q: backspace, and try other letters", p.input.Value())}
	case e.Why != "":
		return ui.Refuse{Err: errors.New(e.Why)}
	}
	return ui.Close{Then: e.Take()}
}

// Type implements ui.Typist: letters look for an entry.
func (p *Palette) Type(_ ui.Context, k tea.KeyMsg) (ui.Intent, bool) {
	before := p.input.Value()
	p.input, _ = p.input.Update(k)
	if p.input.Value() != before {
		p.cursor = 0
		p.look()
	}
	return nil, true
}

// headRows are the lines above the entries.
const headRows = 2

// window is which of the entries are shown.
func (p *Palette) window(c ui.Context) (from, until int) {
	return line.Window(len(p.found), max(1, c.Height-headRows-1), p.cursor.In(len(p.found)))
}

// Click implements ui.Clicker: a click does what it is on.
func (p *Palette) Click(c ui.Context, _, y int) ui.Intent {
	from, until := p.window(c)
	i := from + y - headRows
	if i < from || i >= until {
		return nil
	}
	p.cursor = ui.Cursor(i)
	return p.take()
}

// Lines implements ui.Dialog.
func (p *Palette) Lines(c ui.Context) []string {
	p.input.Width = max(4, c.Width-2)
	out := []string{p.input.View(), ""}
	from, until := p.window(c)
	longest := 0
	for _, at := range p.found[from:until] {
		longest = max(longest, line.Width(p.entries[at].Label))
	}
	for i, at := range p.found[from:until] {
		out = append(out, p.row(c, p.entries[at], longest, from+i == p.cursor.In(len(p.found))))
	}
	if len(p.found) == 0 {
		out = append(out, c.Theme.Dim.Render("Nothing here has these letters."))
	}
	for len(out) < c.Height-1 {
		out = append(out, "")
	}
	return append(out, line.Spread(c.Theme.Dim.Render("the keys on the right do the same"),
		c.Theme.Dim.Render(fmt.Sprintf("%d of %d", until-from, len(p.found))), c.Width))
}

// row draws one entry: its name, no wider than the longest that is shown needs, what is said beside it, and its keys at
// the right.
func (p *Palette) row(c ui.Context, e Entry, longest int, marked bool) string {
	const keys = 10
	label := max(10, min(longest+1, (c.Width-2-keys)*11/20))
	note := max(0, c.Width-2-label-1-keys-1)
	said := e.Note
	if e.Why != "" {
		said = "not now: " + e.Why
	}
	if line.Width(e.Label) > label { // a long name may take the place of what is said beside it
		label, note = min(line.Width(e.Label), label+note), max(0, label+note-line.Width(e.Label))
	}
	style := c.Theme.Strong
	if e.Why != "" {
		style = c.Theme.Dim
	}
	text := style.Render(line.Fit(e.Label, label)) + " " + c.Theme.Dim.Render(line.Fit(said, note)) + " "
	if marked {
		return "> " + c.Theme.Selected.Render(line.Fit(e.Label, label)+" "+line.Fit(said, note)+" "+line.Right(e.Keys, keys))
	}
	return "  " + text + c.Theme.Key.Render(line.Right(e.Keys, keys))
}

// Next implements ui.Adviser: it says in full what enter does, or why it does not.
func (p *Palette) Next(ui.Context) (string, bool) {
	e, ok := p.chosen()
	switch {
	case !ok:
		return "nothing has these letters: backspace, and try others; esc goes back", true
	case e.Why != "":
		return fmt.Sprintf("%s: not now, %s", e.Label, e.Why), true
	}
	text := "enter does it: " + e.Label
	if e.Note != "" {
		text += ", " + e.Note
	}
	return text, true
}
