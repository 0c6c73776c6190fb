// Package theme holds the styles of the desk by the roles that they play. Shape comes before colour:
// nothing is ever said by a hue alone, so that the desk reads the same without any.
package theme

import (
	"io"
	"os"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Theme is the set of styles, made once for an output.
type Theme struct {
	Title    lipgloss.Style // the program's name and headings
	Dim      lipgloss.Style // labels, and what is over or planned
	Strong   lipgloss.Style // what must be found at a glance
	Tab      lipgloss.Style // a screen's name
	TabOn    lipgloss.Style // the name of the screen that is shown
	Next     lipgloss.Style // what the night waits for
	Key      lipgloss.Style // a key
	Good     lipgloss.Style // saved, proved, won
	Warn     lipgloss.Style // needs attention
	Bad      lipgloss.Style // refused, held or dangerous
	Selected lipgloss.Style // the row or card that keys act on
	Cursor   lipgloss.Style // the bar at what keys act on
	Frame    lipgloss.Style // lines, never words
	FrameOn  lipgloss.Style // the lines around what is selected
	TeamA    lipgloss.Style // the team named first
	TeamB    lipgloss.Style // the other team
	Heat1    lipgloss.Style // once
	Heat2    lipgloss.Style // twice
	Heat3    lipgloss.Style // three times or more

	choice Choice
	ink    string // the sequence that sets the colour of text without a style, empty for the terminal's own
}

// New makes the styles for an output, as its environment asks for them.
func New(w io.Writer) *Theme { return Of(Detect(w, os.Getenv)) }

// Plain makes styles without any colour or weight, for output that is no terminal.
func Plain() *Theme { return Of(Choice{Profile: termenv.Ascii}) }

// Of makes the styles of a choice.
func Of(c Choice) *Theme {
	r := lipgloss.NewRenderer(io.Discard)
	profile := c.Profile
	if c.Hueless && profile != termenv.Ascii {
		profile = termenv.ANSI
	}
	r.SetColorProfile(profile)
	b := brush{r: r, choice: c, profile: profile}
	p := c.palette()
	here, act, quiet := b.hue(p.here), b.act(p.act), b.quiet(p.quiet)
	teamA, teamB, done := b.hue(p.teamA), b.hue(p.teamB), b.hue(p.done)
	if c.Name == Quiet {
		teamA, teamB, done = b.plain(), b.plain(), b.plain()
	}
	return &Theme{
		Title:    here.Bold(true),
		Dim:      quiet,
		Strong:   b.plain().Bold(true),
		Tab:      quiet,
		TabOn:    here.Bold(true).Reverse(true),
		Next:     act.Bold(true),
		Key:      here,
		Good:     done,
		Warn:     act,
		Bad:      b.hue(p.stop).Bold(true),
		Selected: here.Bold(true).Reverse(true),
		Cursor:   here.Bold(true),
		Frame:    b.quiet(p.rule),
		FrameOn:  here.Bold(true),
		TeamA:    teamA,
		TeamB:    teamB,
		Heat1:    b.hue(p.heat[0]),
		Heat2:    b.hue(p.heat[1]),
		Heat3:    b.hue(p.heat[2]),
		choice:   c,
		ink:      b.sequence(p.ink),
	}
}

// Choice is what the theme was made for.
func (t *Theme) Choice() Choice { return t.choice }

// Finish makes a composed line ready for the screen: text without a style gets the ink of the theme,
// and where only ASCII is shown every glyph gives way to its twin.
func (t *Theme) Finish(line string) string {
	if t.choice.ASCII {
		line = twins.Replace(line)
	}
	if t.ink == "" || line == "" {
		return line
	}
	return t.ink + strings.ReplaceAll(line, reset, reset+t.ink) + reset
}

// reset is how a style ends.
const reset = "\x1b[0m"

// brush makes styles for one kind of terminal.
type brush struct {
	r       *lipgloss.Renderer
	choice  Choice
	profile termenv.Profile
}

func (b brush) plain() lipgloss.Style { return b.r.NewStyle() }

// value is a colour as the terminal knows it, empty where it has none for it.
func (b brush) value(c colour) string {
	switch {
	case b.choice.Hueless:
		return ""
	case b.profile == termenv.TrueColor:
		return c.full
	case b.profile == termenv.ANSI256:
		return c.indexed
	case b.profile == termenv.ANSI:
		return c.basic
	}
	return ""
}

func (b brush) hue(c colour) lipgloss.Style {
	if v := b.value(c); v != "" {
		return b.plain().Foreground(lipgloss.Color(v))
	}
	return b.plain()
}

// quiet is a colour of its own where there are enough of them, and else the terminal's faint.
func (b brush) quiet(c colour) lipgloss.Style {
	if v := b.value(c); v != "" {
		return b.plain().Foreground(lipgloss.Color(v))
	}
	return b.plain().Faint(true)
}

// act is amber; where no amber is to be had on a light background it is underlined.
func (b brush) act(c colour) lipgloss.Style {
	if v := b.value(c); v != "" {
		return b.plain().Foreground(lipgloss.Color(v))
	}
	return b.underlined()
}

// underlined draws a line under a text in one piece. The library would do it letter by letter, which takes signs apart
// that are joined, and makes the text wider than it is.
func (b brush) underlined() lipgloss.Style {
	if b.profile == termenv.Ascii {
		return b.plain()
	}
	return b.plain().Transform(func(text string) string {
		if text == "" {
			return ""
		}
		return underline + text + noUnderline
	})
}

// The sequences that begin and end a line under a text.
const (
	underline   = "\x1b[4m"
	noUnderline = "\x1b[24m"
)

// sequence sets the colour of the text that follows.
func (b brush) sequence(c colour) string {
	v := b.value(c)
	if v == "" {
		return ""
	}
	return termenv.CSI + b.profile.Color(v).Sequence(false) + "m"
}
