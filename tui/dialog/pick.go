package dialog

import (
	"slices"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Candidate is a person to pick, with what is said beside the name.
type Candidate struct {
	ID   session.PersonID
	Note string
	Say  func() string // the same where it takes a while: it is asked for only of who is seen; nil for none
}

// note is what is said beside the name.
func (x Candidate) note() string {
	if x.Say != nil {
		return x.Say()
	}
	return x.Note
}

// Pick finds a person by typing a few letters.
type Pick struct {
	heading string
	people  func(c ui.Context) []Candidate
	take    func(id session.PersonID) ui.Intent
	verb    string
	input   textinput.Model
	cursor  int
	index   index
}

// index is for finding candidates by name, made once for a state.
type index struct {
	ledger *session.Ledger
	ids    []session.PersonID
	names  ui.Index
}

// NewPick makes a picker. People lists the candidates in the order to show them in while nothing
// is typed; take says what picking one means, and verb names it for the footer.
func NewPick(heading, verb string, people func(c ui.Context) []Candidate, take func(session.PersonID) ui.Intent) *Pick {
	p := &Pick{heading: heading, verb: verb, people: people, take: take, input: NewInput()}
	p.input.Focus()
	return p
}

// Title implements ui.Dialog.
func (p *Pick) Title() string { return p.heading }

// Actions implements ui.Dialog.
func (p *Pick) Actions(c ui.Context) []ui.Action {
	return []ui.Action{
		{Key: ui.Bind("find", "letters")},
		ui.Act(ui.Bind(p.verb, "enter", "enter"), func() ui.Intent {
			found := p.found(c)
			if p.cursor < 0 || p.cursor >= len(found) {
				return nil
			}
			return ui.Close{Then: p.take(found[p.cursor].ID)}
		}),
		{Key: ui.Bind("choose", "↑↓", "up", "shift+tab", "down", "tab", "pgup", "pgdown"), Do: func(key string) ui.Intent {
			step := map[string]int{"down": 1, "tab": 1, "pgdown": c.Height, "pgup": -c.Height}[key]
			if step == 0 {
				step = -1
			}
			p.cursor = max(0, min(len(p.found(c))-1, p.cursor+step))
			return nil
		}},
		ui.Ask(ui.Bind("back", "esc", "esc"), ui.Close{}),
	}
}

// Type implements ui.Typist: letters look for a name.
func (p *Pick) Type(_ ui.Context, k tea.KeyMsg) (ui.Intent, bool) {
	p.input, _ = p.input.Update(k)
	p.cursor = 0
	return nil, true
}

func (p *Pick) found(c ui.Context) []Candidate {
	people := p.people(c)
	ids := make([]session.PersonID, len(people))
	for i, x := range people {
		ids[i] = x.ID
	}
	if p.index.ledger != c.Ledger || !slices.Equal(p.index.ids, ids) {
		names := make([]string, len(people))
		for i, id := range ids {
			names[i] = c.Names.Full(id)
		}
		p.index = index{c.Ledger, ids, ui.NewIndex(names)}
	}
	var out []Candidate
	for _, i := range p.index.names.Search(p.input.Value()) {
		out = append(out, people[i])
	}
	return out
}

// window is which of the people found are shown.
func (p *Pick) window(c ui.Context, found int) (from, until int) {
	return line.Window(found, max(1, c.Height-1), p.cursor)
}

// Click implements ui.Clicker: a click takes whom it is on.
func (p *Pick) Click(c ui.Context, _, y int) ui.Intent {
	found := p.found(c)
	from, until := p.window(c, len(found))
	i := from + y - 1
	if i < from || i >= until {
		return nil
	}
	return ui.Close{Then: p.take(found[i].ID)}
}

// Lines implements ui.Dialog.
func (p *Pick) Lines(c ui.Context) []string {
	p.input.Width = max(4, c.Width-8)
	out := []string{"Name: " + p.input.View()}
	found := p.found(c)
	if len(found) == 0 {
		return append(out, c.Theme.Dim.Render("nobody by that name"))
	}
	name := 0
	for _, x := range found {
		name = max(name, line.Width(c.Names.Full(x.ID)))
	}
	from, until := p.window(c, len(found))
	for i, x := range found[from:until] {
		text := line.Fit(line.Fit(c.Names.Full(x.ID), name)+"  "+x.note(), c.Width-2)
		if from+i == p.cursor {
			out = append(out, "> "+c.Theme.Selected.Render(text))
			continue
		}
		out = append(out, "  "+text)
	}
	return out
}

// Next implements ui.Adviser.
func (p *Pick) Next(ui.Context) (string, bool) {
	return "type a few letters of a name, then enter; esc goes back", true
}

// TakesText tells that letters are text here and choose nothing.
func (p *Pick) TakesText() bool { return true }
