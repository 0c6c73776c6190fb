package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session"
	"club/quadrille/session/name"
	"club/quadrille/tui/dialog"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// helpBox shows all keys, those of the screen first, made from the same actions that are matched.
type helpBox struct {
	heading   string
	screen    []ui.Action
	desk      []ui.Action
	filter    textinput.Model
	filtering bool
	top       int
}

// help opens the help page of the screen that is shown.
func (m *Model) help() tea.Cmd {
	c := m.context()
	heading := m.screenName()
	if !m.showsScreen(c) {
		heading = ""
	}
	return m.show(&helpBox{heading: heading, screen: m.screenActions(c), desk: m.deskActions(c), filter: dialog.NewInput()})
}

// screenActions are what the keys of what is shown do.
func (m *Model) screenActions(c ui.Context) []ui.Action {
	if !m.showsScreen(c) {
		return m.welcomeActions()
	}
	return m.screens[m.active].Actions(c)
}

// Title implements ui.Dialog.
func (*helpBox) Title() string { return "Keys" }

// Wide tells that the box takes all of the width.
func (*helpBox) Wide() bool { return true }

// TakesText tells that letters are text while a filter is typed.
func (h *helpBox) TakesText() bool { return h.filtering }

// AnyKey tells that every key closes it, and nothing else happens; not while a filter is typed.
func (h *helpBox) AnyKey() bool { return !h.filtering }

// Actions implements ui.Dialog.
func (h *helpBox) Actions(c ui.Context) []ui.Action {
	rows, room := len(h.text(c)), h.room(c)
	if h.filtering {
		out := []ui.Action{
			{Key: ui.Bind("filter", "letters")},
			ui.Act(ui.Bind("all keys", "esc", "esc"), func() ui.Intent {
				h.stop()
				return nil
			}),
			ui.Ask(ui.Bind("back", "enter", "enter"), ui.Close{}),
		}
		if rows > room {
			scroll := ui.Scroll(&h.top, rows, room)
			scroll.Key = ui.Bind("scroll", "↑↓", "up", "down", "pgup", "pgdown")
			out = append(out, scroll)
		}
		return out
	}
	out := []ui.Action{
		ui.Ask(ui.Bind("back", "esc", "esc", "enter", "q"), ui.Close{}),
		ui.Act(ui.Bind("filter", "/", "/"), func() ui.Intent {
			h.filtering, h.top = true, 0
			h.filter.Focus()
			return nil
		}),
	}
	if rows > room {
		out = append(out, ui.Scroll(&h.top, rows, room))
	}
	return out
}

// stop shows all keys again.
func (h *helpBox) stop() {
	h.filtering, h.top = false, 0
	h.filter.SetValue("")
	h.filter.Blur()
}

// Type implements ui.Typist: letters filter; before that any other key closes the page.
func (h *helpBox) Type(_ ui.Context, k tea.KeyMsg) (ui.Intent, bool) {
	if !h.filtering {
		return ui.Close{}, true
	}
	h.filter, _ = h.filter.Update(k)
	h.top = 0
	return nil, true
}

// room is how many lines of text are shown: the last line says how much is below, and the first has the filter.
func (h *helpBox) room(c ui.Context) int {
	if h.filtering {
		return max(1, c.Height-2)
	}
	return max(1, c.Height-1)
}

// wideHelp is from where on the keys of the screen and those of the desk stand side by side.
const wideHelp = 100 - 8

// text is all that is to be read.
func (h *helpBox) text(c ui.Context) []string {
	width, two := c.Width, c.Width >= wideHelp
	if two {
		width = (c.Width - 3) / 2
	}
	mine, desk := h.part(c, h.heading, h.screen, width), h.part(c, "Everywhere", h.desk, width)
	var out []string
	switch {
	case two:
		out = line.Beside(mine, desk, width, 3)
	case len(mine) > 0 && len(desk) > 0:
		out = append(append(mine, ""), desk...)
	default:
		out = append(mine, desk...)
	}
	if h.filter.Value() != "" {
		if len(out) == 0 {
			out = append(out, "No key does that. : finds what has no key.")
		}
		return out
	}
	notes := append(line.Wrap("Scores: type both numbers one after the other, the team named first on the card first. "+
		"117 is 11-7. Put a blank between them when it could be read in two ways: 11 1.", c.Width),
		line.Wrap("Faults: kitchen (non-volley zone) is a volley there, on its line or carried into it.", c.Width)...)
	notes = append(notes, line.Wrap("A click does what the key does; with shift held the mouse marks text as usual.", c.Width)...)
	return append(append(out, ""), notes...)
}

// part is one list of keys under its heading, without those that the filter leaves out.
func (h *helpBox) part(c ui.Context, heading string, actions []ui.Action, width int) []string {
	var out []string
	want := strings.Fields(name.Plain(h.filter.Value()))
	for _, a := range actions {
		if len(a.Key.Keys()) > 0 && has(name.Plain(keysText(a)+" "+a.Text()+" "+a.Key.Help().Desc), want) {
			out = append(out, keyLines(c, a, width)...)
		}
	}
	if len(out) == 0 {
		return nil
	}
	return append([]string{c.Theme.Strong.Render(heading)}, out...)
}

// has tells whether a text has all of some words.
func has(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}

// Lines implements ui.Dialog.
func (h *helpBox) Lines(c ui.Context) []string {
	var out []string
	if h.filtering {
		h.filter.Width = max(4, c.Width-10)
		out = append(out, "Filter: "+h.filter.View())
	}
	text, room := h.text(c), h.room(c)
	top := min(h.top, max(0, len(text)-room))
	until := min(len(text), top+room)
	for _, t := range text[top:until] {
		out = append(out, line.Cut(t, c.Width))
	}
	if below := len(text) - until; below > 0 || top > 0 {
		for len(out) < c.Height-1 {
			out = append(out, "")
		}
		out = append(out, c.Theme.Dim.Render(line.Right(fmt.Sprintf("%s below", session.Counted(below, "line")), c.Width)))
	}
	return out
}

// keyLines are the keys of an action and what they do.
func keyLines(c ui.Context, a ui.Action, width int) []string {
	const room = 18
	var out []string
	keys := keysText(a)
	for _, text := range line.Wrap(a.Text(), max(10, width-room-2)) {
		out = append(out, "  "+c.Theme.Key.Render(line.Fit(keys, room))+text)
		keys = ""
	}
	return out
}

// keysText names the keys of an action: all of them where they do the same, and else as the footer does.
func keysText(a ui.Action) string {
	if len(a.Named()) != 1 || len(a.Key.Keys()) > 3 {
		return a.Key.Help().Key
	}
	var out []string
	for _, k := range a.Key.Keys() {
		if k == " " {
			k = "space"
		}
		out = append(out, k)
	}
	return strings.Join(out, " or ")
}
