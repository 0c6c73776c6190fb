package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/tui/ui"
)

// click selects what is under the mouse; the wheel does what the arrows do.
func (m *Model) click(e tea.MouseMsg) tea.Cmd {
	if e.Action != tea.MouseActionPress {
		return nil
	}
	switch e.Button {
	case tea.MouseButtonWheelUp:
		return m.press(tea.KeyMsg{Type: tea.KeyUp})
	case tea.MouseButtonWheelDown:
		return m.press(tea.KeyMsg{Type: tea.KeyDown})
	case tea.MouseButtonLeft:
	default:
		return nil
	}
	if m.dialog() != nil || m.width < minWidth || m.height < minHeight {
		return nil
	}
	c := m.context()
	switch {
	case e.Y == 1:
		if id, ok := tabAt(e.X); ok {
			return m.follow(ui.Go{To: id}, nil)
		}
	case e.Y >= bodyTop && e.Y < bodyTop+c.Height && c.Night() != nil:
		return m.follow(m.screens[m.active].Click(c, e.X, e.Y-bodyTop), nil)
	}
	return nil
}
