package theme

import (
	"fmt"
	"io"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// Name is a theme by its name.
type Name string

// The themes. Auto follows the terminal's background.
const (
	Auto     Name = "auto"
	Dark     Name = "dark"
	Light    Name = "light"
	Quiet    Name = "quiet"    // hues for alarms and for where one is, and for nothing else
	Contrast Name = "contrast" // at least 7 to 1 everywhere
)

// ParseName reads the name of a theme; nothing at all is Auto.
func ParseName(text string) (Name, error) {
	switch n := Name(strings.ToLower(strings.TrimSpace(text))); n {
	case "":
		return Auto, nil
	case Auto, Dark, Light, Quiet, Contrast:
		return n, nil
	}
	return "", fmt.Errorf("no theme is called %q: use auto, dark, light, quiet or contrast", text)
}

// Choice says how the desk is to look on a terminal.
type Choice struct {
	Name    Name            // the zero value is Auto
	Profile termenv.Profile // how many colours the terminal shows; Ascii has no attributes either
	Hueless bool            // no colours: bold, faint, reverse and underline stay
	Bright  bool            // the background is light
	ASCII   bool            // no glyph beyond ASCII but those of people's names
}

// Detect finds out what an output can show, without asking it. NO_COLOR takes hues only: a program that
// fills the screen still needs a cursor and weight. The background is the one that was set for the whole
// program, see package background.
func Detect(w io.Writer, getenv func(string) string) Choice {
	out := termenv.NewOutput(w)
	c := Choice{Profile: out.ColorProfile(), Bright: !lipgloss.HasDarkBackground(), ASCII: plainLocale(getenv)}
	if force := getenv("CLICOLOR_FORCE"); c.Profile == termenv.Ascii && force != "" && force != "0" {
		c.Profile = termenv.ANSI
	}
	if out.EnvNoColor() {
		c.Hueless = true
	}
	return c
}

// plainLocale tells whether the terminal is known to show nothing beyond ASCII: QUADRILLE_GLYPHS says
// so, or the locale is one and is not UTF-8. A locale that is not set says nothing.
func plainLocale(getenv func(string) string) bool {
	switch strings.ToLower(getenv("QUADRILLE_GLYPHS")) {
	case "ascii":
		return true
	case "unicode":
		return false
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToLower(getenv(name)); v != "" {
			return !strings.Contains(v, "utf-8") && !strings.Contains(v, "utf8")
		}
	}
	return false
}

// palette is the one that the choice asks for.
func (c Choice) palette() palette {
	bright := c.Bright
	switch c.Name {
	case Dark:
		bright = false
	case Light:
		bright = true
	}
	switch {
	case c.Name == Contrast && bright:
		return contrastLight
	case c.Name == Contrast:
		return contrastDark
	case bright:
		return light
	}
	return dark
}

// Unsure tells whether the terminal should be asked for its background: it matters, and neither a theme
// nor the environment has settled it.
func (c Choice) Unsure(getenv func(string) string) bool {
	follows := c.Name == "" || c.Name == Auto || c.Name == Quiet || c.Name == Contrast
	return follows && c.Profile != termenv.Ascii && !c.Hueless && getenv("QUADRILLE_BACKGROUND") == ""
}
