package person

import (
	"fmt"
	"strings"

	"club/quadrille/scoring/rating"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// The part below the courts takes so many lines at least, and from some height on has the rating as a picture.
const (
	least      = 6
	plotHeight = 40
)

// picture is the page on a large screen: the night as courts, who was met, and the rating beside the figures.
func (f *facts) picture(c ui.Context) []string {
	out := []string{f.head(c)}
	if c.Height >= plotHeight {
		out = append(out, "")
	}
	if c.Width >= 160 {
		half := c
		half.Width = c.Width/2 - 2
		out = append(out, line.Beside(labelled(half, "Now", f.now(c), 2), labelled(half, "Next", f.next(c), 2), c.Width/2, 0)...)
	} else {
		out = append(out, labelled(c, "Now", f.now(c), 2)...)
		out = append(out, labelled(c, "Next", f.next(c), 2)...)
	}
	out = append(out, labelled(c, "Hurt", f.injuries(c), 2)...)
	if rows := (c.Height - len(out) - least - 6) / courtRows; len(f.evening.Parts) > 0 {
		out = append(out, "")
		out = append(out, f.courts(c, max(1, rows))...)
	}
	if t := f.metTable(c, c.Height-len(out)-least-2); len(t) > 0 {
		out = append(append(out, ""), t...)
	}
	room := c.Height - len(out) - 1
	if room < 1 {
		return out
	}
	out = append(out, "")
	const plotShare = 5 // of nine parts
	left := c.Width * plotShare / 9
	if c.Height < plotHeight {
		course := labelled(c, "Rating", strings.TrimSpace(f.run(24)+" "+f.ratingText()), 1)
		return append(out, fit(append([]section{{lines: course, rank: 2}}, f.figures(c, c.Width, room-2)...), room)...)
	}
	return append(out, line.Beside(f.plot(c, left-3, room), fit(f.figures(c, c.Width-left, room), room), left, 0)...)
}

// figures are the words and bars beside the rating, in a column.
func (f *facts) figures(c ui.Context, width, room int) []section {
	narrow := c
	narrow.Width = width
	wishes := []string{c.Theme.Strong.Render("Wishes")}
	for _, w := range f.evening.Wishes {
		wishes = append(wishes, line.Cut("  "+wish(c, w), width))
	}
	if len(wishes) == 1 {
		wishes[0] += c.Theme.Dim.Render("  none; w takes one")
	}
	out := []section{
		{lines: labelled(narrow, "Place", f.standing(), 2), tight: c.Height < plotHeight},
		{lines: labelled(narrow, "Fair", f.fairness(), 5), rank: 1, tight: c.Height < plotHeight},
		{lines: whyNot(c, width, f.why), rank: 2},
		{lines: wishes, rank: 3, tight: c.Height < plotHeight},
	}
	used := len(out)
	for _, s := range out {
		used += len(s.lines)
	}
	return append(out, section{lines: f.everybody(c, width, room-used), rank: 4})
}

// everybody lists the people in the rotation with what they had, around the person, in at most so many lines.
func (f *facts) everybody(c ui.Context, width, rows int) []string {
	counts := f.evening.Counts
	if rows < 3 || len(counts) == 0 {
		return nil
	}
	const numbers = 4 * 8
	name := max(10, min(30, width-numbers-12))
	bar := max(0, min(24, width-name-numbers-2))
	head := line.Fit("", name+2) + line.Right("sat out", 8) + line.Right("games", 8) + line.Right("waits", 8) + line.Right("present", 8)
	out := []string{c.Theme.Strong.Render("Everybody") + c.Theme.Dim.Render(head[len("Everybody"):])}
	own, most := 0, 1
	for i, k := range counts {
		if k.Person == f.person.ID {
			own = i
		}
		most = max(most, k.SatOut)
		if f.rolling() {
			most = max(most, k.Games)
		}
	}
	from, until := line.Window(len(counts), rows-1, own)
	for i, k := range counts[from:until] {
		mark, style := "  ", c.Theme.Dim
		if from+i == own {
			mark, style = "▸ ", c.Theme.Strong
		}
		wait := ""
		if k.Wait > 0 {
			wait = fmt.Sprintf("%d′", int(k.Wait.Minutes()))
		}
		length := k.SatOut
		if f.rolling() {
			length = k.Games
		}
		text := mark + line.Fit(c.Names.Full(k.Person), name) + line.Right(fmt.Sprint(k.SatOut), 8) + line.Right(fmt.Sprint(k.Games), 8) +
			line.Right(wait, 8) + line.Right(fmt.Sprintf("%d′", int(k.Present.Minutes())), 8)
		out = append(out, style.Render(text)+" "+c.Theme.Heat2.Render(widget.Blocks(bar, float64(length), float64(most))))
	}
	return out
}

// point is a rating in the plot.
type point struct {
	rating rating.Rating
	label  string
}

// points are the rating before the first night and after each.
func (f *facts) points() []point {
	out := []point{{f.rated.start, "start"}}
	for _, n := range f.rated.nights {
		label := n.Night.Opened.Format("2 Jan")
		if n.Night == f.night && f.open {
			label = "tonight"
		}
		out = append(out, point{n.Rating, label})
	}
	return out
}

// run is the course of the rating in a few cells.
func (f *facts) run(width int) string {
	var values []float64
	for _, p := range f.points() {
		values = append(values, p.rating.Mu)
	}
	if len(values) < 2 {
		return ""
	}
	return widget.Run(width, values)
}

// plot draws the rating over the nights with its 95 % range as a band.
func (f *facts) plot(c ui.Context, width, rows int) []string {
	head := []string{c.Theme.Strong.Render("Rating") + "  " + line.Cut(f.ratingText(), width-8)}
	const axis, foot, narrowest, widest = 6, 2, 8, 14
	points := f.points()
	points = points[max(0, len(points)-(width-axis)/narrowest):]
	rows = min(rows, 24) - len(head) - foot
	if rows < 3 || len(points) == 0 {
		return head
	}
	cell := min(widest, (width-axis)/len(points))
	low, high := points[0].rating.Interval()
	for _, p := range points {
		l, h := p.rating.Interval()
		low, high = min(low, l), max(high, h)
	}
	step := (high - low) / float64(rows)
	row := func(v float64) int { return max(0, min(rows-1, int((high-v)/step))) }
	out := head
	for y := range rows {
		label := ""
		if y == 0 || y == rows-1 || y == row(points[len(points)-1].rating.Mu) {
			label = fmt.Sprintf("%.0f", high-(float64(y)+0.5)*step)
		}
		text := c.Theme.Dim.Render(line.Right(label, axis-2)) + "  "
		for _, p := range points {
			l, h := p.rating.Interval()
			switch {
			case y == row(p.rating.Mu):
				text += c.Theme.Key.Render(strings.Repeat("━", cell-1)) + " "
			case y >= row(h) && y <= row(l):
				text += c.Theme.Heat1.Render(strings.Repeat("░", cell-1)) + " "
			default:
				text += strings.Repeat(" ", cell)
			}
		}
		out = append(out, text)
	}
	values, labels := strings.Repeat(" ", axis), strings.Repeat(" ", axis)
	for _, p := range points {
		values += line.Fit(fmt.Sprintf("%.1f", p.rating.Mu), cell)
		labels += line.Fit(p.label, cell)
	}
	return append(out, values, c.Theme.Dim.Render(labels))
}
