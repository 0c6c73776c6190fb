package tui

import (
	"io"

	tea "github.com/charmbracelet/bubbletea"
)

// Run shows the desk until it is quit. What was acknowledged on the screen is on disk by then; a
// command that is still being worked on must be waited for by the caller (session.Desk.Wait).
func Run(desk Desk, o Options, in io.Reader, out io.Writer) error {
	p := tea.NewProgram(New(desk, o), tea.WithAltScreen(), tea.WithMouseCellMotion(), tea.WithInput(in), tea.WithOutput(out))
	_, err := p.Run()
	return err
}
