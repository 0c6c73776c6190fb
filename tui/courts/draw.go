package courts

import (
	"strings"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/session/hall"
	"club/quadrille/tui/line"
	"club/quadrille/tui/widget"
)

// cache keeps finished drawings, since joining styled text is what a frame costs most.
type cache map[face][]string

// drawn is a face as lines of its width, with a blank at the right and as many lines as its size has.
func (s *Courts) drawn(f face) []string {
	if lines, ok := s.cache[f]; ok {
		return lines
	}
	if s.cache == nil || len(s.cache) > 512 {
		s.cache = cache{}
	}
	var lines []string
	switch f.size.kind {
	case oneLine:
		lines = f.oneLine()
	case compact:
		lines = f.compact()
	case card:
		lines = f.card()
	default:
		lines = f.fromAbove()
	}
	mark := " "
	if f.selected {
		mark = f.theme.Cursor.Render("▌")
	}
	for i, text := range lines {
		lines[i] = mark + line.Fit(text, f.width-1)
	}
	for len(lines) < f.size.height { // the space between two rows of courts
		lines = append(lines, strings.Repeat(" ", f.width))
	}
	s.cache[f] = lines
	return lines
}

// live tells whether a game goes on.
func (f *face) live() bool { return f.state == hall.Playing || f.state == hall.Called }

// style is that of a team's name: bold and of its colour while it plays, quiet when it is over or planned.
func (f *face) style(own lipgloss.Style) lipgloss.Style {
	if f.live() {
		return own.Bold(true)
	}
	return f.theme.Dim
}

func (f *face) noteStyle() lipgloss.Style {
	if f.alarm {
		return f.theme.Next
	}
	return f.theme.Dim
}

// bar is the time played of the time expected.
func (f *face) bar(width int) string {
	if f.expected == 0 || width < 1 || !f.live() {
		return strings.Repeat(" ", max(0, width))
	}
	text := widget.Progress(width, float64(f.played), float64(f.expected))
	if f.played >= f.expected {
		return f.theme.Next.Render(text)
	}
	return f.theme.Frame.Render(text)
}

// courtName is the number of the court, or its name in a fifth of the width.
func (f *face) courtName(width int) string {
	id := line.Right(f.id, max(2, min(line.Width(f.id), width/5)))
	if f.selected {
		return f.theme.Selected.Render(id)
	}
	return f.theme.Strong.Render(id)
}

// head is the number, the bar and the note.
func (f *face) head(width int) string {
	id := f.courtName(width)
	note := line.Cut(f.note, width-line.Width(id)-3)
	room := width - line.Width(id) - line.Width(note) - 3
	return id + " " + f.bar(room) + " " + f.noteStyle().Render(note) + " "
}

// points are the score of a team with the marks around it: game point, serve, won.
func (f *face) points(t team) string {
	before, behind := " ", " "
	if t.point {
		before = f.theme.Next.Render("◆")
	}
	switch {
	case t.won:
		behind = f.theme.Good.Render("✓")
	case t.serves != none:
		behind = "●"
	}
	number := line.Right(t.points, 2)
	if f.live() || t.won {
		number = f.theme.Strong.Render(number)
	} else {
		number = f.theme.Dim.Render(number)
	}
	return before + number + " " + behind
}

// teamLine is a team with its points. A bar stands before people on a court. Names are cut last of all.
func (f *face) teamLine(t team, own lipgloss.Style, width int) string {
	edge := " "
	if f.live() {
		edge = own.Render("▎")
	}
	points := ""
	if t.points != "" {
		points = f.points(t)
	}
	room := width - 2 - line.Width(points)
	name := inRoom(t.name, room)
	return " " + edge + f.style(own).Render(line.Fit(name, room)) + points
}

// inRoom is the name of a team in so many cells: closer together, then cut, but never so that one of the two vanishes.
func inRoom(name string, room int) string {
	a, b, two := strings.Cut(name, " & ")
	switch {
	case line.Width(name) <= room:
		return name
	case two:
		return line.Both(a, "&", b, room)
	}
	return line.Cut(name, room)
}

// compact is three lines: head and both teams, or what an empty court waits for.
func (f *face) compact() []string {
	width := f.width - 1
	out := []string{f.head(width)}
	if f.a.name == "" {
		return append(out, "  "+f.theme.Dim.Render(line.Cut(f.foot, width-3)))
	}
	return append(out, f.teamLine(f.a, f.theme.TeamA, width), f.teamLine(f.b, f.theme.TeamB, width))
}

// card is five lines: head, the teams with the net between them, and the foot.
func (f *face) card() []string {
	width := f.width - 1
	out := []string{f.head(width)}
	if f.a.name == "" {
		return append(out, "  "+f.theme.Dim.Render(line.Cut(f.foot, width-3)))
	}
	net := "  " + f.theme.Frame.Render(strings.Repeat("╌", width-4))
	return append(out, f.teamLine(f.a, f.theme.TeamA, width), net, f.teamLine(f.b, f.theme.TeamB, width),
		"  "+f.theme.Dim.Render(line.Cut(f.foot, width-3)))
}

// oneLine is a court in one line, for a small screen.
func (f *face) oneLine() []string {
	width := f.width - 1
	id := f.courtName(width)
	note := line.Right(line.Cut(f.note, 10), min(10, max(4, line.Width(f.note))))
	if f.a.name == "" {
		rest := f.note
		if f.foot != "" {
			rest += ": " + f.foot
		}
		return []string{id + " " + f.theme.Dim.Render(line.Cut(rest, width-2-line.Width(id)))}
	}
	score := " v "
	if f.a.points != "" {
		score = " " + f.a.points + "-" + f.b.points + " "
	}
	room := width - 2 - line.Width(id) - line.Width(note) - line.Width(score)
	left := line.Right(inRoom(f.a.name, room/2), room/2)
	right := line.Fit(inRoom(f.b.name, room-room/2), room-room/2)
	middle := f.theme.Strong.Render(score)
	if !f.live() {
		middle = f.theme.Dim.Render(score)
	}
	return []string{id + " " + f.style(f.theme.TeamA).Render(left) + middle + f.style(f.theme.TeamB).Render(right) + " " + f.noteStyle().Render(note)}
}
