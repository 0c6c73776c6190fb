package teach

import (
	"fmt"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scoring"
	"club/quadrille/scoring/drill"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// Drill asks for the next call, checks it and says why.
type Drill struct {
	lesson  drill.Lesson
	input   textinput.Model
	verdict *drill.Verdict // of the answer before, nil at the start
	wrong   error          // the answer could not be read
}

// NewDrill makes a drill on games under some rules.
func NewDrill(seed uint64, rules scoring.Rules) (*Drill, error) {
	lesson, err := drill.New(seed, rules)
	if err != nil {
		return nil, err
	}
	d := &Drill{lesson: lesson, input: dialog.NewInput()}
	d.input.Focus()
	return d, nil
}

// Title implements ui.Dialog.
func (*Drill) Title() string { return "Drill" }

// Whole tells that the drill wants the whole screen.
func (*Drill) Whole() bool { return true }

// TakesText tells that letters are text here and choose nothing.
func (*Drill) TakesText() bool { return true }

// Actions implements ui.Dialog.
func (d *Drill) Actions(ui.Context) []ui.Action {
	return []ui.Action{
		ui.Act(ui.Bind("answer", "enter", "enter"), func() ui.Intent {
			d.answer()
			return nil
		}),
		ui.Ask(ui.Bind("back", "esc", "esc"), ui.Close{}),
	}
}

// Type implements ui.Typist: letters are the answer.
func (d *Drill) Type(_ ui.Context, k tea.KeyMsg) (ui.Intent, bool) {
	d.input, _ = d.input.Update(k)
	d.wrong = nil
	return nil, true
}

func (d *Drill) answer() {
	a, err := drill.ParseAnswer(d.input.Value())
	if d.wrong = err; err != nil {
		return
	}
	next, verdict := d.lesson.Answer(a)
	d.lesson, d.verdict = next, &verdict
	d.input.SetValue("")
}

// Lines implements ui.Dialog.
func (d *Drill) Lines(c ui.Context) []string {
	out := d.feedback(c)
	q := d.lesson.Question()
	for _, text := range line.Wrap(q.Text(), c.Width) {
		out = append(out, c.Theme.Strong.Render(text))
	}
	out = append(out, picture(c, q.Before, c.Height-len(out)-rowsBelow)...)
	d.input.Width = max(10, c.Width-20)
	out = append(out, "Your answer: "+d.input.View())
	switch {
	case d.wrong != nil:
		for _, text := range line.Wrap("! "+d.wrong.Error(), c.Width) {
			out = append(out, c.Theme.Bad.Render(text))
		}
	case d.lesson.Asked == 0:
		out = append(out, c.Theme.Dim.Render("the call, who serves, from which box: 1-0-2 A1 left"))
	}
	out = append(out, c.Theme.Dim.Render(d.lesson.String()))
	return out[:min(len(out), c.Height)]
}

// rowsBelow is the room for the answer under the picture.
const rowsBelow = 5

// picture is the court to scale with the seats on it, as large as there is room for, drawn like that of a
// game on its board.
func picture(c ui.Context, s scoring.State, height int) []string {
	width, height, ok := widget.ToScale(c.Width-2, height)
	if !ok {
		return nil
	}
	var out []string
	for _, row := range (widget.Seats{
		State: s, Name: scoring.Seat.String,
		TeamA: c.Theme.TeamA.Render, TeamB: c.Theme.TeamB.Render, Server: c.Theme.Strong.Render, Line: c.Theme.Frame.Render,
	}).Court().Lines(width, height) {
		out = append(out, " "+row)
	}
	return append(out, " "+c.Theme.Dim.Render(widget.Legend))
}

// feedback says what became of the answer before.
func (d *Drill) feedback(c ui.Context) []string {
	if d.verdict == nil {
		return nil
	}
	style, text := c.Theme.Good, "Right. "+d.verdict.Why
	if !d.verdict.Right {
		style, text = c.Theme.Warn, fmt.Sprintf("Wrong: it is %s. %s", d.verdict.Expected, d.verdict.Why)
	}
	var out []string
	for _, t := range line.Wrap(text, c.Width) {
		out = append(out, style.Render(t))
	}
	return append(out, "")
}
