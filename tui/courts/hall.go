package courts

import (
	"strings"

	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// Lines implements ui.Screen: the hall, or the board of one game.
func (s *Courts) Lines(c ui.Context) []string {
	n := c.Night()
	if n == nil || len(c.Hall.Courts) == 0 {
		return []string{"", "No night is open."}
	}
	if g := s.board.on(n); g != nil {
		return s.board.lines(c, g)
	}
	g := s.layout(c)
	out := s.rows(c, g)
	out = out[:min(len(out), g.space)] // the panel is seen on any terminal
	if g.aside > 0 {
		out = line.Beside(out, aside(c, g.aside-3, g.space), c.Width-g.aside, 1)
	} else {
		out = append(out, below(c, g.space-len(out))...)
	}
	for len(out) < g.space {
		out = append(out, "")
	}
	return append(out, s.panel(c, g)...)
}

// rows draws the courts, row by row.
func (s *Courts) rows(c ui.Context, g grid) []string {
	var out []string
	current, why := s.at(c), idleOf(c)
	for row := g.top; row < g.top+g.shown; row++ {
		var drawn [][]string
		for i := row * g.columns; i < min((row+1)*g.columns, g.courts); i++ {
			f := faceOf(c, &c.Hall.Courts[i], why)
			f.size, f.width, f.selected = g.size, g.width, i == current
			drawn = append(drawn, s.drawn(f))
		}
		for y := range g.height {
			var b strings.Builder
			for _, lines := range drawn {
				b.WriteString(lines[y])
			}
			out = append(out, b.String())
		}
	}
	return out
}

// at is the index of the selected court.
func (s *Courts) at(c ui.Context) int { return s.current(c.Night()) }
