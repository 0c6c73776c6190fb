package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// click does what is under the mouse; the wheel does what the arrows do.
func (m *Model) click(e tea.MouseMsg) tea.Cmd {
	if e.Action != tea.MouseActionPress {
		return nil
	}
	switch e.Button {
	case tea.MouseButtonWheelUp:
		return m.wheel(tea.KeyMsg{Type: tea.KeyUp})
	case tea.MouseButtonWheelDown:
		return m.wheel(tea.KeyMsg{Type: tea.KeyDown})
	case tea.MouseButtonLeft:
	default:
		return nil
	}
	if m.width < minWidth || m.height < minHeight {
		return nil
	}
	m.seen = m.ledger.Last()
	c := m.context()
	if e.Y == m.height-1 {
		return m.clickFooter(c, e.X)
	}
	if d := m.dialog(); d != nil {
		return m.clickBox(c, d, e.X, e.Y)
	}
	switch {
	case e.Y == 1:
		if id, ok := tabAt(e.X); ok && e.X < m.width-line.Width(m.sign(c)) {
			return m.follow(ui.Go{To: id}, nil)
		}
	case e.Y == bodyTop-1 && m.attentionLine(c) != "":
		return m.attention()
	case e.Y >= bodyTop && e.Y < bodyTop+c.Height && c.Night() != nil:
		return m.follow(m.screens[m.active].Click(c, e.X, e.Y-bodyTop), nil)
	case e.Y >= bodyTop+c.Height && e.Y < bodyTop+c.Height+nextRows && m.offersNext(c):
		return m.nextStep()
	}
	return nil
}

// offersNext tells whether the line of what is next names the key that does it, so that a click there does the same.
func (m *Model) offersNext(c ui.Context) bool {
	key := stepKeysOf(m.typing(c)).next
	return m.dialog() == nil && m.past == nil && m.trouble == nil && strings.Contains(m.nextLine(), "press "+key+" ")
}

// wheel is an arrow, but never the any key that closes a page.
func (m *Model) wheel(k tea.KeyMsg) tea.Cmd {
	if d := m.dialog(); d != nil {
		intent, _ := ui.Match(d.Actions(m.dialogContext(d)), k)
		return m.follow(intent, d)
	}
	return m.press(k)
}

// clickFooter does what the key under the mouse does, where all of its keys do the same.
func (m *Model) clickFooter(c ui.Context, x int) tea.Cmd {
	a, ok := m.footerAt(c, x)
	if ways := a.Named(); ok && len(ways) == 1 {
		return m.follow(a.Take(ways[0].Key), m.dialog())
	}
	return nil
}

// clickBox gives a click to the box on top, if it lies there. What lies under a box takes none.
func (m *Model) clickBox(c ui.Context, d ui.Dialog, x, y int) tea.Cmd {
	box, ok := d.(ui.Clicker)
	if !ok {
		return nil
	}
	dc := m.dialogContext(d)
	if !whole(d) {
		rows := min(len(d.Lines(dc)), dc.Height)
		left, top := corner(dc.Width+4, rows+2, c.Width, c.Height)
		x, y = x-left-2, y-bodyTop-top-1 // inside the frame
		if y >= rows {
			return nil
		}
	}
	if x < 0 || x >= dc.Width || y < 0 {
		return nil
	}
	return m.follow(box.Click(dc, x, y), d)
}
