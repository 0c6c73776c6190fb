package tui

import (
	"context"
	"io"
	"runtime"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/term"

	"club/quadrille/tui/terminal"
	"club/quadrille/tui/theme"
)

// Run shows the desk until it is quit or ctx ends, and tells what is not saved then. What was acknowledged
// on the screen is on disk by then; a command that is still being worked on must be waited for by the
// caller (session.Desk.Wait).
func Run(ctx context.Context, desk Desk, o Options, in io.Reader, out io.Writer) (*Unsaved, error) {
	if o.Theme == nil {
		o.Theme = theme.New(out)
	}
	// text fields draw their cursor with styles of their own, which follow the whole program's profile
	lipgloss.SetColorProfile(o.Theme.Choice().Profile)
	m := New(desk, o)
	in = endPastes(in)
	var p *tea.Program
	if o.AskBackground {
		wrapped, ok := wrap(in, out, func(light bool) { p.Send(backgroundMsg{light}) })
		if ok {
			in, out, m.ask = wrapped.Input(), wrapped.Output(), wrapped.Ask
		}
	}
	p = tea.NewProgram(m, tea.WithAltScreen(), tea.WithMouseCellMotion(), tea.WithInput(in), tea.WithOutput(out), tea.WithContext(ctx))
	if o.Phones != nil {
		o.Phones.Hear(func(s Sent) { p.Send(s) })
	}
	_, err := p.Run()
	if ctx.Err() != nil {
		err = nil // the terminal was closed: that is a way to quit
	}
	return m.Left(), err
}

// wrap stands between the desk and its terminal where there is one that can be asked, and whose answer
// can be taken out of the keys. On Windows keys do not come as bytes.
func wrap(in io.Reader, out io.Writer, answer func(light bool)) (*terminal.Terminal, bool) {
	i, isIn := keys(in)
	o, isOut := out.(term.File)
	if !isIn || !isOut || !term.IsTerminal(o.Fd()) {
		return nil, false
	}
	return terminal.Wrap(i, o, time.Now, answer), true
}

// endPastes ends pastes that lost their end, where keys come as bytes from a terminal.
func endPastes(in io.Reader) io.Reader {
	if i, ok := keys(in); ok {
		return terminal.NewPastes(i, time.Now)
	}
	return in
}

// keys tells whether in is a terminal from which keys come as bytes.
func keys(in io.Reader) (term.File, bool) {
	i, ok := in.(term.File)
	return i, ok && runtime.GOOS != "windows" && term.IsTerminal(i.Fd())
}

// backgroundMsg tells what the terminal's background is.
type backgroundMsg struct{ light bool }

// repaint changes the theme to suit the background, where that is not what was taken for granted.
func (m *Model) repaint(light bool) {
	c := m.options.Theme.Choice()
	if c.Bright == light {
		return
	}
	c.Bright = light
	m.options.Theme = theme.Of(c)
}
