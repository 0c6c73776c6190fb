// Package theme holds the styles of the desk. Colours are the terminal's own sixteen, so that the
// desk follows whatever palette its user has chosen; nothing is ever said by colour alone.
package theme

import (
	"io"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Theme is the set of styles, made once for an output.
type Theme struct {
	Title    lipgloss.Style // the program's name and headings
	Dim      lipgloss.Style // what may be overlooked
	Strong   lipgloss.Style // what must be found at a glance
	Tab      lipgloss.Style // a screen's name
	TabOn    lipgloss.Style // the name of the screen that is shown
	Next     lipgloss.Style // what to do next
	Key      lipgloss.Style // a key
	Good     lipgloss.Style // done
	Warn     lipgloss.Style // needs attention
	Bad      lipgloss.Style // refused or dangerous
	Selected lipgloss.Style // the row or card that keys act on
	Frame    lipgloss.Style // borders
	FrameOn  lipgloss.Style // the border of what is selected
}

// New makes the styles for an output; colours follow what the terminal can show, and NO_COLOR. The
// background is the one that was set for the whole program: a renderer left to itself would ask the
// terminal, and wait five seconds for one that never answers.
func New(w io.Writer) *Theme {
	r := lipgloss.NewRenderer(w)
	r.SetHasDarkBackground(lipgloss.HasDarkBackground())
	return from(r)
}

// Plain makes styles without any colour or weight, as NO_COLOR has them.
func Plain() *Theme {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(termenv.Ascii)
	return from(r)
}

func from(r *lipgloss.Renderer) *Theme {
	style := func(c string) lipgloss.Style { return r.NewStyle().Foreground(lipgloss.Color(c)) }
	const (
		red, green, yellow, blue, cyan, grey = "9", "10", "11", "12", "14", "8"
	)
	dim := r.NewStyle().Foreground(lipgloss.AdaptiveColor{Light: grey, Dark: "7"})
	return &Theme{
		Title:    style(cyan).Bold(true),
		Dim:      dim,
		Strong:   r.NewStyle().Bold(true),
		Tab:      r.NewStyle(),
		TabOn:    style(cyan).Bold(true).Reverse(true),
		Next:     style(yellow).Bold(true),
		Key:      style(cyan),
		Good:     style(green),
		Warn:     style(yellow),
		Bad:      style(red).Bold(true),
		Selected: style(blue).Bold(true).Reverse(true),
		Frame:    dim,
		FrameOn:  style(blue).Bold(true),
	}
}
