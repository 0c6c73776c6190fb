package widget

import (
	"strings"

	"club/quadrille/tui/line"
)

// Spot is a place of a court with who stands there.
type Spot struct {
	Name               string
	Serves, Receives   bool
	Style, MarkedStyle func(...string) string // nil writes as it is; MarkedStyle is for the server
}

// Court is a court seen from above with the net upright in the middle: a team on the left and one on
// the right. Of each team the first stands in the upper box. Who looks across the net from the left has
// the right box below, and from the right above.
type Court struct {
	Left, Right [2]Spot
	Line        func(...string) string // draws the lines; nil writes them as they are
}

// Feet of a court: its length, and from a baseline to the line of the non-volley zone. A court is 20 by
// 44 ft, the zone 7 ft deep on each side of the net (USA Pickleball Official Rulebook, section 2).
const (
	length = 44
	toZone = 15
)

// The smallest size in which a court can be drawn.
const (
	LeastWidth  = 21
	LeastHeight = 5
)

// Lines draws the court to scale along its length: width cells wide and height lines high, with its
// lines. A size that is too small gives nothing.
func (c Court) Lines(width, height int) []string {
	if width < LeastWidth || height < LeastHeight {
		return nil
	}
	inner := width - 2
	zone := max(2, (inner*toZone)/length) // cells from the baseline to the line of the non-volley zone
	net := inner / 2
	kitchen := net - zone - 1
	last := inner - net - 1 - kitchen - 1 // cells of the right service boxes: what is left over
	middle := (height - 1) / 2
	draw := c.Line
	if draw == nil {
		draw = func(s ...string) string { return strings.Join(s, "") }
	}
	dash := func(n int) string { return strings.Repeat("─", n) }
	gap := func(n int) string { return strings.Repeat(" ", n) }
	out := []string{draw("┌" + dash(zone) + "┬" + dash(kitchen) + "╥" + dash(kitchen) + "┬" + dash(last) + "┐")}
	upper, lower := 1+(middle-2)/2, height-2-(height-3-middle)/2
	for y := 1; y < height-1; y++ {
		if y == middle {
			out = append(out, draw("├"+dash(zone)+"┤"+gap(kitchen)+"║"+gap(kitchen)+"├"+dash(last)+"┤"))
			continue
		}
		left, right := gap(zone), gap(last)
		switch y {
		case upper:
			left, right = c.Left[0].at(zone, false), c.Right[0].at(last, true)
		case lower:
			left, right = c.Left[1].at(zone, false), c.Right[1].at(last, true)
		}
		out = append(out, draw("│")+left+draw("│"+gap(kitchen)+"║"+gap(kitchen)+"│")+right+draw("│"))
	}
	return append(out, draw("└"+dash(zone)+"┴"+dash(kitchen)+"╨"+dash(kitchen)+"┴"+dash(last)+"┘"))
}

// at is the spot in a box of some width, against the baseline, with its mark outside.
func (s Spot) at(width int, right bool) string {
	mark := " "
	switch {
	case s.Serves:
		mark = "●"
	case s.Receives:
		mark = "○"
	}
	text := line.Fit(s.Name, width-1)
	if right {
		text = line.Right(s.Name, width-1)
	}
	style := s.Style
	if s.Serves && s.MarkedStyle != nil {
		style = s.MarkedStyle
	}
	if style != nil {
		text, mark = style(text), style(mark)
	}
	if right {
		return text + mark
	}
	return mark + text
}
