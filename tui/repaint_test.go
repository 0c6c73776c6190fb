package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"club/quadrille/tui/theme"
)

// TestRepaintsForTheBackground: the desk asks once it has a size, and an answer that differs from what
// was taken for granted changes colours everywhere and no word.
func TestRepaintsForTheBackground(t *testing.T) {
	for _, c := range []theme.Choice{
		{Profile: termenv.TrueColor},
		{Profile: termenv.ANSI256, Name: theme.Contrast},
		{Profile: termenv.ANSI},
	} {
		s := newStage(t).roster(4, "roster18.csv")
		s.press("c", "n")
		s.theme = theme.Of(c)
		s.reopen()
		asked := 0
		s.m.ask = func() { asked++ }
		s.m.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
		if asked != 1 {
			t.Fatalf("asked %d times", asked)
		}
		before := s.m.View()
		s.m.Update(backgroundMsg{light: false})
		if s.m.View() != before {
			t.Error("a dark background, which was taken for granted, changes the frame")
		}
		s.m.Update(backgroundMsg{light: true})
		after := s.m.View()
		if ansi.Strip(after) != ansi.Strip(before) {
			t.Error("the words differ after a repaint")
		}
		c.Bright = true
		light := theme.Of(c)
		for _, word := range []string{light.Key.Render("?"), light.Dim.Render("help")} {
			if !strings.Contains(after, word) {
				t.Errorf("%v: the footer lacks %q", c, word)
			}
		}
		if strings.Contains(after, theme.Of(theme.Choice{Profile: c.Profile, Name: c.Name}).Key.Render("?")) {
			t.Errorf("%v: a key still has the colour for dark", c)
		}
	}
}

// TestASCII: on a terminal without glyphs every cell of the desk is ASCII, and the columns stay.
func TestASCII(t *testing.T) {
	s := newStage(t).roster(4, "roster18.csv")
	s.press("c", "n")
	s.theme = theme.Of(theme.Choice{Profile: termenv.Ascii, ASCII: true})
	s.reopen()
	for _, tab := range tabs {
		s.press("esc", tab.key)
		checkFrame(t, s.m)
		for _, r := range s.m.View() {
			if r > 126 {
				t.Errorf("%s shows %q", tab.name, r)
				break
			}
		}
	}
}
