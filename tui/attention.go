package tui

import (
	"fmt"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/attention"
	call "club/quadrille/session/calling"
	"club/quadrille/tui/courts"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// mind is what wants attention, and what of it was put aside until it changes.
type mind struct {
	all   []attention.Matter
	aside map[string]bool // by their IDs
	known map[string]bool // what has rung, or need not
	ring  bool            // something new is worth a sound
}

// attend works out what wants attention now. A matter that is settled is forgotten: it is put aside and rung
// anew when it comes again.
func (m *Model) attend() {
	d := &m.mind
	d.all = attention.Of(m.ledger, m.hall, m.fileState(), m.unreadCalls(), m.now)
	known, aside := map[string]bool{}, map[string]bool{}
	for _, x := range d.all {
		d.ring = d.ring || x.Rings() && d.known != nil && !d.known[x.ID]
		known[x.ID], aside[x.ID] = true, d.aside[x.ID]
	}
	d.known, d.aside = known, aside
}

// unreadCalls are the games of a fresh call that were not read out. While somebody reads them nobody need be told.
func (m *Model) unreadCalls() []call.Call {
	list := call.Of(m.ledger.Night(), nil, m.now)
	if m.active == ui.CallingPage || !m.now.Before(list.Until) {
		return nil
	}
	return m.calling.Left(list)
}

// startAfresh puts aside what was told when the desk was open before.
func (d *mind) startAfresh() {
	for _, x := range d.all {
		d.aside[x.ID] = x.Kind == attention.Clock
	}
}

// open lists what was not put aside.
func (d *mind) open() []attention.Matter {
	return slices.DeleteFunc(slices.Clone(d.all), func(x attention.Matter) bool { return d.aside[x.ID] })
}

// fileState is what is wrong with the club file.
func (m *Model) fileState() attention.FileState {
	switch t := m.trouble; {
	case t == nil:
		return attention.FileState{}
	case t.command != nil:
		return attention.FileState{Unsaved: t.action}
	default:
		return attention.FileState{Displaced: true}
	}
}

// ring sounds the terminal's bell if something new wants it and the settings do.
func (m *Model) ring() tea.Cmd {
	rings := m.mind.ring && m.options.Bell != nil
	m.mind.ring = false
	if !rings {
		return nil
	}
	bell := m.options.Bell
	return func() tea.Msg {
		bell()
		return nil
	}
}

// attentionLine says on every screen what is most urgent, how many more there are, and the key.
func (m *Model) attentionLine(c ui.Context) string {
	open := m.mind.open()
	if len(open) == 0 {
		return ""
	}
	key, more := m.shownKey(attentionKey, m.typing(c)), len(open)-1
	tail := key + " shows it"
	switch {
	case m.dialog() != nil && more > 0:
		tail = fmt.Sprintf("+%d", more)
	case m.dialog() != nil:
		tail = ""
	case more > 0:
		tail = fmt.Sprintf("+%d, %s lists them", more, key)
	}
	style := c.Theme.Warn
	if open[0].Kind <= attention.Hurt {
		style = c.Theme.Bad
	}
	return line.Spread(style.Render(line.Cut(" ! "+open[0].Text, m.width-line.Width(tail)-1)), c.Theme.Dim.Render(tail), m.width)
}

// attentionKey is the name of the key of the list.
const attentionKey = "attention"

// attention opens the list.
func (m *Model) attention() tea.Cmd { return m.show(&matters{m: m}) }

// matters is the list of what wants attention.
type matters struct {
	m      *Model
	cursor ui.Cursor
}

// Title implements ui.Dialog.
func (*matters) Title() string { return "Attention" }

// chosen is the matter under the cursor, false when there is none.
func (b *matters) chosen() (attention.Matter, bool) {
	open := b.m.mind.open()
	if len(open) == 0 {
		return attention.Matter{}, false
	}
	return open[b.cursor.In(len(open))], true
}

// Actions implements ui.Dialog.
func (b *matters) Actions(c ui.Context) []ui.Action {
	out := []ui.Action{ui.Ask(ui.Bind("back", "esc", "esc"), ui.Close{})}
	x, ok := b.chosen()
	if !ok {
		return out
	}
	name, do := b.m.remedy(x)
	act := ui.Ask(ui.Bind(name, "enter", "enter"), ui.Close{Then: do})
	if do == nil {
		act = ui.Ask(ui.Bind(name, "enter", "enter"), nil).Because(name)
	}
	if refuse := courts.RefuseSent(c, x.Court); x.Kind == attention.Sent && refuse != nil {
		out = append(out, ui.Ask(ui.Bind("refuse it", "Y", "Y"), refuse))
	}
	return append([]ui.Action{
		act,
		ui.Act(ui.Bind("put aside until it changes", "x", "x"), func() ui.Intent {
			b.m.mind.aside[x.ID] = true
			return nil
		}),
		b.cursor.Move(len(b.m.mind.open())),
	}, out...)
}

// Click implements ui.Clicker: a click on what is marked does it.
func (b *matters) Click(c ui.Context, _, y int) ui.Intent {
	open := b.m.mind.open()
	from, until := b.window(c)
	i := from + y
	switch {
	case i < from || i >= until:
		return nil
	case i != b.cursor.In(len(open)):
		b.cursor = ui.Cursor(i)
		return nil
	}
	return b.Actions(c)[0].Take("enter")
}

// window is which of the matters are shown.
func (b *matters) window(c ui.Context) (from, until int) {
	k := len(b.m.mind.open())
	return line.Window(k, max(1, c.Height), b.cursor.In(k))
}

// Lines implements ui.Dialog.
func (b *matters) Lines(c ui.Context) []string {
	open := b.m.mind.open()
	if len(open) == 0 {
		return []string{"Nothing wants your attention."}
	}
	at := b.cursor.In(len(open))
	from, until := b.window(c)
	note := 0
	for _, x := range open {
		name, _ := b.m.remedy(x)
		note = max(note, line.Width(name))
	}
	note = min(note, c.Width/2)
	var out []string
	for i, x := range open[from:until] {
		name, _ := b.m.remedy(x)
		text := line.Fit(x.Text, c.Width-3-note) + " " + line.Right(name, note)
		if from+i == at {
			out = append(out, "> "+c.Theme.Selected.Render(text))
			continue
		}
		out = append(out, "  "+text)
	}
	return out
}

// Next implements ui.Adviser: it says the matter in full.
func (b *matters) Next(ui.Context) (string, bool) {
	x, ok := b.chosen()
	if !ok {
		return "esc goes back", true
	}
	return x.Text, true
}

// remedy is what is done about a matter, and in words; nil where only a key that is named does it.
func (m *Model) remedy(x attention.Matter) (string, ui.Intent) {
	own := func(do func(*Model) tea.Cmd) ui.Intent { return ui.Own{Do: func() tea.Cmd { return do(m) }} }
	switch x.Kind {
	case attention.File:
		if m.trouble != nil && m.trouble.displaced() {
			return "ctrl+b writes it back", nil
		}
		return "ctrl+r saves it", own((*Model).tryAgain)
	case attention.Hold:
		return "to the hold", own((*Model).hold)
	case attention.Hurt:
		return "decide", own(func(m *Model) tea.Cmd {
			if g := m.night().Game(m.night().Court(x.Court).Game); g != nil {
				return m.show(courts.AfterInjury(m.context(), g))
			}
			return nil
		})
	case attention.Heat:
		return "what to do", own((*Model).heat)
	case attention.Sent:
		if take := courts.TakeSent(m.context(), x.Court); take != nil {
			return "take it", take
		}
		return "to court " + string(x.Court), ui.GoCourt{Court: x.Court}
	case attention.Clock:
		return "closing time", own((*Model).settings)
	case attention.TimeUp, attention.Overlong:
		return "to court " + string(x.Court), ui.GoCourt{Court: x.Court}
	case attention.Complete:
		return "call the round", own((*Model).nextStep)
	case attention.RoundLate:
		return "to the courts", ui.Go{To: ui.Courts}
	case attention.Unread:
		return "read it out", ui.Open{Page: ui.CallingPage}
	case attention.Waiting:
		return "to the bench", ui.Go{To: ui.Bench}
	case attention.Closing:
		if m.night().Settings.Flow == session.Rounds {
			return "to the rotation", ui.Go{To: ui.RotationScreen}
		}
		return "options", own((*Model).settings)
	case attention.Posted:
		return "messages", own((*Model).messages)
	}
	return "to the door", ui.Go{To: ui.Door}
}

func (m *Model) night() *session.Night { return m.ledger.Night() }
