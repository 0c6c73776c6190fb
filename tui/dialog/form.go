package dialog

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Field is one line of a form: free text, or one of several options.
type Field struct {
	Label   string
	Value   string
	Hint    string   // what may stand here
	Options []string // the only values possible; empty for free text
}

// Form is a box to fill in. Enter sends it from any field; what was typed stays until it is taken.
type Form struct {
	heading string
	fields  []Field
	inputs  []textinput.Model
	began   []string // the values before anybody typed
	cursor  int
	fresh   bool // nothing was typed into the field yet: the first letter replaces its value
	send    func(values []string) (ui.Intent, error)
	wrong   error
	note    string
}

// NewForm makes a form. Send gets the values in the order of the fields; its error is shown in the
// form, which then stays open.
func NewForm(heading string, send func(values []string) (ui.Intent, error), fields ...Field) *Form {
	f := &Form{heading: heading, fields: fields, send: send}
	for _, field := range fields {
		in := NewInput()
		in.SetValue(field.Value)
		in.CursorEnd()
		f.inputs, f.began = append(f.inputs, in), append(f.began, field.Value)
	}
	f.focus(0)
	return f
}

// At puts the cursor on the field of a label, and leaves it where it is if there is none.
func (f *Form) At(label string) *Form {
	if i := slices.IndexFunc(f.fields, func(x Field) bool { return x.Label == label }); i >= 0 {
		f.focus(i)
	}
	return f
}

// Noting says something above the fields; nothing if it is empty.
func (f *Form) Noting(text string) *Form {
	f.note = text
	return f
}

// notes are the lines of the note, as far as they leave room for the hint and a few fields.
func (f *Form) notes(c ui.Context) []string {
	if f.note == "" {
		return nil
	}
	const fields = 3
	lines := line.Wrap(f.note, c.Width)
	return lines[:min(len(lines), max(0, c.Height-1-f.hintRows(c)-min(len(f.fields), fields)))]
}

// NewInput is a text field as the desk uses it: no prompt, a steady cursor.
func NewInput() textinput.Model {
	in := textinput.New()
	in.Prompt = ""
	in.CharLimit = 200
	in.Cursor.SetMode(cursor.CursorStatic)
	return in
}

func (f *Form) focus(i int) {
	f.cursor = (i + len(f.fields)) % len(f.fields)
	f.fresh = true
	for j := range f.inputs {
		if j == f.cursor {
			f.inputs[j].Focus()
			continue
		}
		f.inputs[j].Blur()
	}
}

// Title implements ui.Dialog.
func (f *Form) Title() string { return f.heading }

// Actions implements ui.Dialog.
func (f *Form) Actions(ui.Context) []ui.Action {
	out := []ui.Action{
		ui.Act(ui.Bind("done", "enter", "enter"), func() ui.Intent {
			intent, err := f.send(f.values())
			if f.wrong = err; err != nil {
				f.blame(err)
				return nil
			}
			return intent
		}),
		{Key: ui.Bind("field", "↑↓", "up", "shift+tab", "down", "tab"), Do: func(key string) ui.Intent {
			by := 1
			if key == "up" || key == "shift+tab" {
				by = -1
			}
			f.focus(f.cursor + by)
			return nil
		}},
	}
	if len(f.fields[f.cursor].Options) > 0 {
		out = append(out, ui.Action{Key: ui.Bind("change", "←→", "left", "right", " "), Do: func(key string) ui.Intent {
			f.wrong = nil
			f.fields[f.cursor].turn(key)
			return nil
		}})
	}
	return append(out, ui.Ask(ui.Bind("back", "esc", "esc"), ui.Close{}))
}

// blame puts the cursor where an error has to be mended: on the field that it names, or else on the only one that was
// changed.
func (f *Form) blame(err error) {
	text, at, changed := strings.ToLower(err.Error()), -1, 0
	values := f.values()
	for i, field := range f.fields {
		if strings.HasPrefix(text, strings.ToLower(field.Label)+":") {
			at, changed = i, 1
			break
		}
		if values[i] != f.began[i] {
			at = i
			changed++
		}
	}
	if changed == 1 && at != f.cursor {
		f.focus(at)
	}
}

// Type implements ui.Typist: text goes to the field with the cursor, if it takes any.
func (f *Form) Type(_ ui.Context, k tea.KeyMsg) (ui.Intent, bool) {
	f.wrong = nil
	if len(f.fields[f.cursor].Options) == 0 {
		f.edit(k)
	}
	return nil, true
}

// edit gives a key to the field of free text. As where text is marked, the first letter replaces
// what stands there; any other key, such as an arrow, begins to edit it instead.
func (f *Form) edit(k tea.KeyMsg) {
	in := &f.inputs[f.cursor]
	if f.fresh && (k.Type == tea.KeyRunes || k.Type == tea.KeyBackspace) {
		in.SetValue("")
	}
	f.fresh = false
	*in, _ = in.Update(k)
}

// turn moves a field of options to the next or the one before.
func (f *Field) turn(key string) {
	i, n := slices.Index(f.Options, f.Value), len(f.Options)
	switch key {
	case "left":
		f.Value = f.Options[(i+n-1)%n]
	case "right", " ":
		f.Value = f.Options[(i+1)%n]
	}
}

func (f *Form) values() []string {
	out := make([]string, len(f.fields))
	for i, field := range f.fields {
		if out[i] = field.Value; len(field.Options) == 0 {
			out[i] = f.inputs[i].Value()
		}
	}
	return out
}

// window is which of the fields are shown.
func (f *Form) window(c ui.Context) (from, until int) {
	return line.Window(len(f.fields), max(1, c.Height-1-f.hintRows(c)-len(f.notes(c))), f.cursor)
}

// hintRows is how many lines the longest hint takes: as many are kept below every field, so that nothing jumps.
// A low screen gives them two at most.
func (f *Form) hintRows(c ui.Context) int {
	rows := 1
	for _, field := range f.fields {
		rows = max(rows, len(line.Wrap(field.Hint, c.Width)))
	}
	return min(rows, max(1, c.Height/6))
}

// hint says what may stand in the field with the cursor.
func (f *Form) hint(c ui.Context) []string {
	rows := f.hintRows(c)
	out := line.Wrap(f.fields[f.cursor].Hint, c.Width)
	if len(out) > rows {
		out = append(out[:rows-1], line.Cut(strings.Join(out[rows-1:], " "), c.Width))
	}
	for i := range out {
		out[i] = c.Theme.Dim.Render(out[i])
	}
	for len(out) < rows {
		out = append(out, "")
	}
	return out
}

// Click implements ui.Clicker: a click goes to a field; on the options of the field that one is in, it takes
// the next one.
func (f *Form) Click(c ui.Context, _, y int) ui.Intent {
	from, until := f.window(c)
	i := from + y - len(f.notes(c))
	switch {
	case i < from || i >= until:
	case i != f.cursor:
		f.focus(i)
	case len(f.fields[i].Options) > 0:
		f.wrong = nil
		f.fields[i].turn("right")
	}
	return nil
}

// Lines implements ui.Dialog.
func (f *Form) Lines(c ui.Context) []string {
	label := 0
	for _, field := range f.fields {
		label = max(label, line.Width(field.Label))
	}
	out := f.notes(c)
	from, until := f.window(c)
	for i := from; i < until; i++ {
		field, mark := f.fields[i], "  "
		if i == f.cursor {
			mark = "> "
		}
		out = append(out, line.Cut(mark+line.Fit(field.Label, label)+"  "+f.cell(c, i, c.Width-label-4), c.Width))
	}
	out = append(out, c.Theme.Dim.Render(shown(from, until, len(f.fields), c.Width)))
	if f.wrong != nil {
		for _, text := range line.Wrap("! "+f.wrong.Error(), c.Width) {
			out = append(out, c.Theme.Bad.Render(text))
		}
		return out
	}
	return append(out, f.hint(c)...)
}

// shown says which part of a list is seen, when that is not all of it.
func shown(from, until, all, width int) string {
	if until-from == all {
		return ""
	}
	return line.Right(fmt.Sprintf("%d to %d of %d", from+1, until, all), width)
}

func (f *Form) cell(c ui.Context, i, width int) string {
	field := f.fields[i]
	if len(field.Options) > 0 {
		if i == f.cursor {
			return "< " + c.Theme.Selected.Render(field.Value) + " >"
		}
		return "  " + field.Value
	}
	in := f.inputs[i]
	in.Width = max(4, width-3)
	if i == f.cursor && f.fresh && in.Value() != "" {
		return "  " + c.Theme.Selected.Render(line.Cut(in.Value(), width-2))
	}
	return "  " + in.View()
}

// Next implements ui.Adviser.
func (f *Form) Next(ui.Context) (string, bool) {
	return "fill in what is to be different, then enter; esc goes back", true
}

// TakesText tells that letters are text here and choose nothing.
func (f *Form) TakesText() bool { return true }
