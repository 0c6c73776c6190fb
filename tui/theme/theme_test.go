package theme

import (
	"io"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"
)

// styles are all styles of a theme by their names.
func styles(th *Theme) map[string]lipgloss.Style {
	out := map[string]lipgloss.Style{}
	v := reflect.ValueOf(*th)
	for i := range v.NumField() {
		if f := v.Type().Field(i); f.IsExported() {
			out[f.Name] = v.Field(i).Interface().(lipgloss.Style)
		}
	}
	return out
}

// TestPlainWritesNothingButText: no colour and no weight.
func TestPlainWritesNothingButText(t *testing.T) {
	for name, s := range styles(Plain()) {
		if got := s.Render("text"); got != "text" {
			t.Errorf("%s writes %q", name, got)
		}
	}
	if got := Plain().Finish("text"); got != "text" {
		t.Errorf("a finished line is %q", got)
	}
}

// TestNoColorTakesHuesOnly: weight, reverse, underline and faint stay, since a screen without a cursor
// cannot be used; and no style changes the text or its width.
func TestNoColorTakesHuesOnly(t *testing.T) {
	t.Setenv("CLICOLOR_FORCE", "1")
	for _, noColour := range []string{"", "1"} {
		t.Setenv("NO_COLOR", noColour)
		th := New(io.Discard)
		hues := 0
		for name, s := range styles(th) {
			got := s.Render("text")
			if ansi.Strip(got) != "text" || lipgloss.Width(got) != 4 {
				t.Errorf("%s changes the text to %q", name, got)
			}
			const joined = "👩‍👩‍👧 e\u0301 李" // which a terminal draws narrower than its parts
			if got := s.Render(joined); !strings.Contains(got, joined) {
				t.Errorf("%s takes %q apart: %q", name, joined, got)
			}
			for _, p := range parameters(got) {
				if p >= 30 {
					hues++
				}
			}
		}
		if noColour != "" && hues > 0 || noColour == "" && hues < 8 {
			t.Errorf("with NO_COLOR=%q %d styles have a hue", noColour, hues)
		}
		for name, want := range map[string]int{"Strong": 1, "Dim": 2, "Selected": 7, "TabOn": 7} {
			if got := styles(th)[name].Render("text"); !contains(parameters(got), want) {
				t.Errorf("with NO_COLOR=%q %s is %q, without the attribute %d", noColour, name, got, want)
			}
		}
	}
}

// parameters are the numbers of the sequences that set graphics in text.
func parameters(text string) []int {
	var out []int
	for _, part := range strings.Split(text, "\x1b[")[1:] {
		body, _, ok := strings.Cut(part, "m")
		if !ok {
			continue
		}
		for _, n := range strings.Split(body, ";") {
			if v, err := strconv.Atoi(n); err == nil {
				out = append(out, v)
			}
		}
	}
	return out
}

func contains(list []int, want int) bool {
	for _, v := range list {
		if v == want {
			return true
		}
	}
	return false
}

// backgrounds are those that people have: black and white, and the values of two wide-spread palettes
// (an editor's greys, and the cream and petrol of Solarized, by E. Schoonover). Values from memory.
var backgrounds = map[bool]map[string]string{
	false: {"black": "#000000", "grey": "#1e1e1e", "petrol": "#002b36"},
	true:  {"white": "#ffffff", "cream": "#fdf6e3"},
}

// TestContrast: every text can be read on every usual background, and quiet is quieter than ink.
func TestContrast(t *testing.T) {
	for _, c := range []struct {
		name   string
		p      palette
		bright bool
		least  float64
	}{
		{"dark", dark, false, 4.5},
		{"light", light, true, 4.5},
		{"contrast on dark", contrastDark, false, 7},
		{"contrast on light", contrastLight, true, 7},
	} {
		roles := map[string]colour{
			"ink": c.p.ink, "quiet": c.p.quiet, "here": c.p.here, "act": c.p.act, "stop": c.p.stop,
			"team a": c.p.teamA, "team b": c.p.teamB, "done": c.p.done,
		}
		for place, bg := range backgrounds[c.bright] {
			for _, depth := range []struct {
				name string
				of   func(colour) string
			}{
				{"full", func(c colour) string { return c.full }},
				{"256", func(c colour) string { return indexed(t, c.indexed) }},
			} {
				for role, value := range roles {
					if got := contrast(t, depth.of(value), bg); got < c.least {
						t.Errorf("%s, %s, %s on %s: contrast %.2f, below %.1f", c.name, depth.name, role, place, got, c.least)
					}
				}
				if q, i := contrast(t, depth.of(c.p.quiet), bg), contrast(t, depth.of(c.p.ink), bg); q >= i*0.85 {
					t.Errorf("%s, %s on %s: quiet has %.2f, ink %.2f", c.name, depth.name, place, q, i)
				}
			}
		}
	}
}

// TestContrastAgainstPublishedValues: black on white is 21 to 1, and #777777 on white 4.48, the value
// that is commonly given for the darkest grey that just fails (WCAG 2.1, relative luminance).
func TestContrastAgainstPublishedValues(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{{"#000000", "#ffffff", 21}, {"#777777", "#ffffff", 4.48}} {
		if got := contrast(t, c.a, c.b); math.Abs(got-c.want) > 0.01 {
			t.Errorf("%s on %s: %.3f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

// contrast is the ratio of WCAG 2.1.
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	x, y := luminance(t, a), luminance(t, b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// luminance is the relative luminance of WCAG 2.1.
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	v, err := strconv.ParseUint(strings.TrimPrefix(hex, "#"), 16, 32)
	if err != nil || len(hex) != 7 {
		t.Fatalf("%q is no colour", hex)
	}
	part := func(shift uint) float64 {
		c := float64(v>>shift&0xff) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*part(16) + 0.7152*part(8) + 0.0722*part(0)
}

// indexed is the value of one of the 256 colours: xterm's cube of 6x6x6 and its 24 greys.
func indexed(t *testing.T, number string) string {
	t.Helper()
	n, err := strconv.Atoi(number)
	if err != nil || n < 16 || n > 255 {
		t.Fatalf("%q is no colour of the cube", number)
	}
	c := termenv.ConvertToRGB(termenv.ANSI256Color(n))
	return c.Hex()
}

// TestSixteenColoursKeepQuietQuiet: where the palette is the user's, quiet is faint and has no hue.
func TestSixteenColoursKeepQuietQuiet(t *testing.T) {
	for _, bright := range []bool{false, true} {
		th := Of(Choice{Profile: termenv.ANSI, Bright: bright})
		for _, s := range []lipgloss.Style{th.Dim, th.Frame, th.Tab} {
			if got := parameters(s.Render("x")); !contains(got, 2) || contains(got, 90) || contains(got, 37) {
				t.Errorf("quiet is %v", got)
			}
		}
		if got := parameters(th.Next.Render("x")); bright && !contains(got, 4) {
			t.Errorf("on a light background what to do next is %v, and not underlined", got)
		}
	}
}

// TestThemesDiffer: each theme is one of its own, and the names of all are read.
func TestThemesDiffer(t *testing.T) {
	seen := map[string]Name{}
	for _, name := range []Name{Dark, Light, Quiet, Contrast} {
		if got, err := ParseName(strings.ToUpper(string(name))); err != nil || got != name {
			t.Errorf("%s is read as %q, %v", name, got, err)
		}
		th := Of(Choice{Name: name, Profile: termenv.TrueColor})
		all := th.Finish(th.Dim.Render("x")) + th.TeamA.Render("x") + th.Good.Render("x")
		if other, ok := seen[all]; ok {
			t.Errorf("%s looks like %s", name, other)
		}
		seen[all] = name
	}
	if got, err := ParseName(""); err != nil || got != Auto {
		t.Errorf("no name is %q, %v", got, err)
	}
	if _, err := ParseName("neon"); err == nil || !strings.Contains(err.Error(), "contrast") {
		t.Errorf("an unknown name gives %v", err)
	}
}

// TestFinishKeepsInkBetweenStyles: text behind a styled word is ink again.
func TestFinishKeepsInkBetweenStyles(t *testing.T) {
	th := Of(Choice{Profile: termenv.TrueColor})
	got := th.Finish("a " + th.Good.Render("b") + " c")
	if ansi.Strip(got) != "a b c" {
		t.Errorf("the text is %q", ansi.Strip(got))
	}
	if n := strings.Count(got, th.ink); n != 2 {
		t.Errorf("ink is set %d times in %q", n, got)
	}
}

// TestTwinsKeepTheirPlace: every glyph has a twin of ASCII and of the same width.
func TestTwinsKeepTheirPlace(t *testing.T) {
	if len(pairs)%2 != 0 {
		t.Fatal("a glyph has no twin")
	}
	th := Of(Choice{Profile: termenv.Ascii, ASCII: true})
	for i := 0; i < len(pairs); i += 2 {
		glyph, twin := pairs[i], pairs[i+1]
		if len(twin) != 1 || twin[0] >= utf8.RuneSelf || ansi.StringWidth(glyph) != 1 {
			t.Errorf("%q and %q do not take the same cell", glyph, twin)
		}
		if got := th.Finish(glyph); got != twin {
			t.Errorf("%q is shown as %q", glyph, got)
		}
	}
	if got := th.Finish("Zoë 李雷"); got != "Zoë 李雷" {
		t.Errorf("a name is shown as %q", got)
	}
}

// TestPlainLocale: ASCII where it was asked for, or where the locale is set and not UTF-8.
func TestPlainLocale(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want bool
	}{
		{nil, false},
		{map[string]string{"LANG": "de_DE.UTF-8"}, false},
		{map[string]string{"LANG": "C.utf8"}, false},
		{map[string]string{"LANG": "C"}, true},
		{map[string]string{"LANG": "de_DE.UTF-8", "LC_ALL": "POSIX"}, true},
		{map[string]string{"LANG": "C", "LC_CTYPE": "en_GB.UTF-8"}, false},
		{map[string]string{"LANG": "C", "QUADRILLE_GLYPHS": "unicode"}, false},
		{map[string]string{"LANG": "en_GB.UTF-8", "QUADRILLE_GLYPHS": "ascii"}, true},
	} {
		if got := plainLocale(func(k string) string { return c.env[k] }); got != c.want {
			t.Errorf("%v: ASCII only is %v", c.env, got)
		}
	}
}
