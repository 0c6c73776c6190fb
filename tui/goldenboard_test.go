package tui

import (
	"fmt"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
)

// TestGoldenBoard draws a game scored by rallies, before and after the teams change ends, and the pages for
// newcomers that have the same drawing.
func TestGoldenBoard(t *testing.T) {
	for _, c := range []struct {
		name string
		open func(*testing.T) *stage
		keys []string
	}{
		{"board", underWay, []string{"enter"}},
		{"ends due", underWay, []string{"enter", "aaaaa"}},
		{"ends switched", underWay, []string{"enter", "aaaaa", "e", "bba"}},
		{"mirrored", underWay, []string{"enter", "v"}},
		{"long game", underWay, []string{"enter", "abbaabbbaaaabbbabababbbbaaabba", "m", "t", "a"}},
		{"fault asked for", underWay, []string{"enter", "F", "left"}},
		{"card", underWay, []string{"t", "c"}},
		{"drill", underWay, []string{"t", "d"}},
	} {
		for _, size := range append(sizes, [2]int{60, 24}, [2]int{80, 19}) {
			t.Run(fmt.Sprintf("%s/%dx%d", c.name, size[0], size[1]), func(t *testing.T) {
				s := c.open(t).resize(size[0], size[1]).press(c.keys...)
				checkFrame(t, s.m)
				golden.RequireEqual(t, s.m.View())
			})
		}
	}
}
