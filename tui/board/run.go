package board

import (
	"context"
	"errors"
	"io"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session/public"
	"club/quadrille/tui/theme"
)

// News is what a board is told: a view, or that the desk is not there, with the reason where people can do
// something about it.
type News struct {
	View *public.View
	Why  string
}

// Options are what a board gets from outside.
type Options struct {
	Theme *theme.Theme
	File  string // the club file that the board is about
	Now   func() time.Time
	// Code draws a text for cameras in a width and height, nil where it does not fit; it may be nil.
	Code func(text string, width, height int) []string
	// Follow tells the news until ctx ends.
	Follow func(ctx context.Context, tell func(News))
}

// Model is the board as Bubble Tea runs it.
type Model struct {
	board Board
	now   func() time.Time
	began time.Time // of the turns
}

// newModel makes a board that has heard nothing.
func newModel(o Options) *Model {
	if o.Theme == nil {
		o.Theme = theme.Plain()
	}
	return &Model{
		board: Board{theme: o.Theme, pen: newPen(o.Theme.Choice().ASCII), file: o.File, code: o.Code},
		now:   o.Now, began: o.Now(),
	}
}

// Run shows the board until it is quit or ctx ends.
func Run(ctx context.Context, o Options, in io.Reader, out io.Writer) error {
	follow, stop := context.WithCancel(ctx)
	p := tea.NewProgram(newModel(o), tea.WithAltScreen(), tea.WithInput(in), tea.WithOutput(out), tea.WithContext(ctx))
	done := make(chan struct{})
	go func() {
		defer close(done)
		o.Follow(follow, func(n News) { p.Send(n) })
	}()
	_, err := p.Run()
	stop()
	<-done
	if ctx.Err() != nil || errors.Is(err, tea.ErrInterrupted) {
		err = nil // the terminal was closed, or the program was interrupted: these are ways to quit
	}
	return err
}

// secondMsg tells that a second has passed.
type secondMsg struct{}

func tick() tea.Cmd { return tea.Every(time.Second, func(time.Time) tea.Msg { return secondMsg{} }) }

// Init implements tea.Model.
func (m *Model) Init() tea.Cmd { return tick() }

// Update implements tea.Model. A board takes no keys but those that end it.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.board.width, m.board.height = msg.Width, msg.Height
	case secondMsg:
		m.board.passed = m.now().Sub(m.began)
		return m, tick()
	case News:
		m.hear(msg)
	case tea.KeyMsg:
		switch msg.String() {
		case "q", "esc", "ctrl+c":
			return m, tea.Quit
		}
	}
	return m, nil
}

// hear takes the news in. When people are called the courts come first again.
func (m *Model) hear(n News) {
	b := &m.board
	b.why, b.away = n.Why, n.View == nil
	if n.View == nil {
		return
	}
	if newlyCalled(b.view, n.View) {
		m.began, b.passed = m.now(), 0
	}
	b.view = n.View
}

// View implements tea.Model.
func (m *Model) View() string {
	if m.board.width == 0 {
		return ""
	}
	return strings.Join(m.board.Lines(), "\n")
}
