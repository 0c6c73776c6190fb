package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"club/quadrille/session"
	"club/quadrille/tui/theme"
)

// pagesOf are the pages of the desk by the keys that lead there.
var pagesOf = []struct {
	name string
	keys []string
}{
	{"door", []string{"d"}},
	{"hall", []string{"c"}},
	{"board", []string{"c", "home", "enter"}},
	{"court menu", []string{"c", "m"}},
	{"bench", []string{"b"}},
	{"rotation", []string{"r"}},
	{"map", []string{"r", "v"}},
	{"certificate", []string{"r", "v", "v"}},
	{"standings", []string{"s"}},
	{"league", []string{"s", "v"}},
	{"ratings", []string{"s", "v", "v"}},
	{"partners", []string{"s", "v", "v", "v"}},
	{"history", []string{"h"}},
	{"timeline", []string{"h", "t"}},
	{"in short", []string{"h", "y"}},
	{"call list", []string{"k"}},
	{"read out", []string{"c", "v"}},
	{"person", []string{"b", "enter"}},
	{"find", []string{"f"}},
	{"palette", []string{":"}},
	{"help", []string{"?"}},
	{"attention", []string{"a"}},
	{"emergency card", []string{"C"}},
	{"tonight", []string{"o"}},
	{"messages", []string{"M"}},
}

// lookedAt are nights of all kinds and sizes: none, an empty one, and from a small one to the largest.
var lookedAt = []struct {
	name  string
	open  func(*testing.T) *stage
	sizes [][2]int
	ascii bool // so are all names
}{
	{"no night", func(t *testing.T) *stage { return newStage(t) }, sizes, true},
	{"nobody here", func(t *testing.T) *stage {
		return newStage(t).do(session.OpenNight{Name: "Club night", Settings: session.DefaultSettings(7), Courts: 3})
	}, sizes, true},
	{"3 courts, 8 people", func(t *testing.T) *stage { return called(t, 3, 8).pass(4) }, sizes, true},
	{"12 courts, 37 people, rolling", func(t *testing.T) *stage {
		s := newStage(t).people(12, 37, func(s *session.Settings) { s.Flow = session.Rolling })
		return s.press("c", "n").pass(6)
	}, sizes, false},
	{"longest names", func(t *testing.T) *stage { return named(t, session.Rounds) }, sizes[:1], false},
	{"24 courts, 200 people", func(t *testing.T) *stage { return secondNight(t, session.Rounds, 24, 200) }, sizes[2:], false},
}

// TestGoldenLooks draws every page of every such night, those of a night in one file.
func TestGoldenLooks(t *testing.T) {
	for _, n := range lookedAt {
		t.Run(n.name, func(t *testing.T) {
			s := n.open(t)
			for _, size := range n.sizes {
				t.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(t *testing.T) {
					s.t = t
					var frames strings.Builder
					for _, page := range pagesOf {
						s.reopen().resize(size[0], size[1]).press("esc").press(page.keys...)
						checkFrame(t, s.m)
						fmt.Fprintf(&frames, "%s\n%s\n", page.name, s.m.View())
					}
					golden.RequireEqual(t, frames.String())
				})
			}
		})
	}
}

// TestEachLookDrawsTheSame: themes and colours change no cell of any page; without glyphs every cell has a twin in its
// place, and where names are ASCII nothing else is left.
func TestEachLookDrawsTheSame(t *testing.T) {
	var looks []theme.Choice
	for _, name := range []theme.Name{theme.Auto, theme.Dark, theme.Light, theme.Quiet, theme.Contrast} {
		looks = append(looks, theme.Choice{Name: name, Profile: termenv.TrueColor})
	}
	looks = append(looks,
		theme.Choice{Profile: termenv.ANSI256, Bright: true}, theme.Choice{Profile: termenv.ANSI},
		theme.Choice{Profile: termenv.ANSI, Hueless: true}, theme.Choice{Profile: termenv.TrueColor, ASCII: true})
	for _, n := range lookedAt {
		t.Run(n.name, func(t *testing.T) {
			s := n.open(t)
			s.t = t
			for _, size := range n.sizes {
				for _, page := range pagesOf {
					draw := func(look *theme.Theme) []string {
						s.theme = look
						s.reopen().resize(size[0], size[1]).press("esc").press(page.keys...)
						return s.lines()
					}
					plain := draw(theme.Plain())
					for _, look := range looks {
						for i, l := range draw(theme.Of(look)) {
							switch bare := ansi.Strip(l); {
							case !look.ASCII && bare != plain[i]:
								t.Fatalf("%s at %v, %+v: line %d is\n%q and without colours\n%q", page.name, size, look, i, bare, plain[i])
							case look.ASCII && ansi.StringWidth(bare) != ansi.StringWidth(plain[i]):
								t.Fatalf("%s at %v without glyphs: line %d is\n%q and with them\n%q", page.name, size, i, bare, plain[i])
							case look.ASCII && n.ascii && strings.ContainsFunc(bare, func(r rune) bool { return r > 126 }):
								t.Fatalf("%s at %v without glyphs: line %d is %q", page.name, size, i, bare)
							}
						}
					}
				}
			}
		})
	}
}
