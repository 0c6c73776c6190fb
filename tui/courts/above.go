package courts

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/tui/line"
	"club/quadrille/tui/widget"
)

// gutter is the room at each team of a court to scale, for its number and for the points.
const gutter = 8

// sides are the teams as they stand on the court, with the styles of their names.
func (f *face) sides() (left, right team, leftStyle, rightStyle lipgloss.Style) {
	if f.switched {
		return f.b, f.a, f.theme.TeamB, f.theme.TeamA
	}
	return f.a, f.b, f.theme.TeamA, f.theme.TeamB
}

// fromAbove draws the court to scale, with everybody in a box, and digits that are read across the hall.
func (f *face) fromAbove() []string {
	height := f.size.height - 4          // the bar above, the foot below, and a blank line
	width := f.size.width - 2*gutter - 1 // the cursor's bar takes a cell of its own
	court := f.court(width, height)
	number := widget.Digits(digitsOnly(f.id), f.theme.Choice().ASCII)
	atLeft, atRight, _, _ := f.sides()
	left, right := widget.Digits(atLeft.points, f.theme.Choice().ASCII), widget.Digits(atRight.points, f.theme.Choice().ASCII)
	numberStyle := f.theme.Strong
	if f.selected {
		numberStyle = f.theme.Key.Bold(true)
	}
	out := []string{f.above(width)}
	for y, row := range court {
		l, r := strings.Repeat(" ", gutter), strings.Repeat(" ", gutter)
		switch at := y - (height - widget.DigitRows); {
		case y < widget.DigitRows:
			text := number[y]
			if text == "" && y == 1 {
				text = f.id // a court with a name and no number
			}
			l = numberStyle.Render(line.Right(text+" ", gutter))
		case at >= 0:
			l = f.pointStyle(atLeft).Render(line.Right(left[at]+" ", gutter))
			r = f.pointStyle(atRight).Render(line.Fit(" "+right[at], gutter))
		}
		out = append(out, l+row+r)
	}
	return append(out, strings.Repeat(" ", gutter)+f.footStyled(width))
}

// above is the line over the court: the bar and the minutes, or what the court is in.
func (f *face) above(width int) string {
	note := f.note
	if f.live() && !f.alarm && f.expected > 0 && strings.HasSuffix(note, "′") && !strings.Contains(note, "of") {
		note += " of about " + strconv.Itoa(f.expected) + "′"
	}
	note = line.Cut(note, width-4)
	room := width - line.Width(note) - 2
	if !f.live() {
		return strings.Repeat(" ", gutter) + f.noteStyle().Render(note)
	}
	return strings.Repeat(" ", gutter) + f.bar(room) + "  " + f.noteStyle().Render(note)
}

// footStyled is the line under the court: who won, or the call.
func (f *face) footStyled(width int) string {
	switch {
	case f.a.won:
		return f.theme.Good.Render("✓ ") + line.Cut(f.a.name, width-2)
	case f.b.won:
		return f.theme.Good.Render("✓ ") + line.Cut(f.b.name, width-2)
	}
	return f.theme.Dim.Render(line.Cut(f.foot, width))
}

func (f *face) pointStyle(t team) lipgloss.Style {
	switch {
	case t.point:
		return f.theme.Next
	case t.won:
		return f.theme.Good
	case f.live():
		return f.theme.Strong
	}
	return f.theme.Dim
}

// court is the drawing from above. From the left team the right box is the lower one, from the right team
// the upper one.
func (f *face) court(width, height int) []string {
	spot := func(t team, name string, in box, own lipgloss.Style) widget.Spot {
		return widget.Spot{
			Name: name, Serves: t.serves == in && in != none, Receives: t.takes == in && in != none,
			Style: f.style(own).Render, MarkedStyle: f.theme.Strong.Render,
		}
	}
	l, r, own, other := f.sides()
	return widget.Court{
		Left:  [2]widget.Spot{spot(l, l.left, inLeft, own), spot(l, l.right, inRight, own)},
		Right: [2]widget.Spot{spot(r, r.right, inRight, other), spot(r, r.left, inLeft, other)},
		Line:  f.theme.Frame.Render,
	}.Lines(width, height)
}

// digitsOnly is a court's number where its name is one of up to two digits, and nothing else.
func digitsOnly(id string) string {
	if len(id) > 2 || strings.Trim(id, "0123456789") != "" {
		return ""
	}
	return id
}
