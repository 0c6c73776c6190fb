package tui

import (
	"fmt"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"club/quadrille/tui/theme"
)

// TestGoldenWay draws what finds the way about, on three terminals and once without a glyph beyond ASCII.
func TestGoldenWay(t *testing.T) {
	for _, c := range []struct {
		name string
		keys []string
	}{
		{"palette", []string{":", "court 3"}},
		{"help", []string{"?"}},
		{"attention", []string{"a"}},
		{"walk", []string{"t", "w", "enter"}},
		{"undo", []string{"h", "u"}},
	} {
		for _, size := range sizes {
			t.Run(fmt.Sprintf("%s/%dx%d", c.name, size[0], size[1]), func(t *testing.T) {
				s := overlong(t).resize(size[0], size[1]).press(c.keys...)
				checkFrame(t, s.m)
				golden.RequireEqual(t, s.m.View())
			})
		}
		t.Run(c.name+"/ascii", func(t *testing.T) {
			s := overlong(t)
			s.m.options.Theme = theme.Of(theme.Choice{Profile: termenv.Ascii, ASCII: true})
			s.press(c.keys...)
			checkFrame(t, s.m)
			golden.RequireEqual(t, s.m.View())
		})
	}
}
