package rotation

import (
	"fmt"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// heatName is the room for a name before its row, and heatAround how many lines stand around the rows of the map: the
// heading, the heads of the columns, what the marks mean, and what the row of the cursor says.
const (
	heatName   = 12
	heatAround = 5
)

// heatCell is how many cells a person has in a row of the map: three where all fit, else two.
func (f *facts) heatCell(width int) int {
	if heatName+3*len(f.people) <= width {
		return 3
	}
	return 2
}

// heatShown is how many columns and rows of the map fit.
func (f *facts) heatShown(c ui.Context) (columns, rows int) {
	columns = max(1, (c.Width-heatName)/f.heatCell(c.Width))
	return min(columns, len(f.people)), min(max(1, c.Height-heatAround), len(f.people))
}

// heat is the map of who met whom: partners above the diagonal, opponents below. Shape tells how often, and colour
// too. The row of the cursor is said in words under it.
func (r *Rotation) heat(c ui.Context) []string {
	f := &r.facts
	if len(f.people) == 0 {
		return []string{c.Theme.Dim.Render("nobody is here yet: the map fills as people play")}
	}
	columns, rows := f.heatShown(c)
	cell, at := f.heatCell(c.Width), r.who.In(len(f.people))
	top, _ := line.Window(len(f.people), rows, at)
	left := min(r.left, len(f.people)-columns)
	what := "played and planned"
	if r.past {
		what = "played"
	}
	head := c.Theme.Strong.Render("Who met whom") + c.Theme.Dim.Render("  "+what+": partners above the diagonal, opponents below")
	out := []string{line.Cut(head, c.Width)}
	heads := strings.Repeat(" ", heatName)
	for j := left; j < left+columns; j++ {
		style := c.Theme.Dim
		if j == at {
			style = c.Theme.Strong
		}
		heads += style.Render(line.Fit(line.Fit(initials(c.Names.Short(f.people[j])), 2), cell))
	}
	out = append(out, heads)
	m := marksOf(c, cell)
	for i := top; i < top+rows; i++ {
		name := line.Fit(c.Names.Short(f.people[i]), heatName-2)
		switch {
		case i == at:
			name = c.Theme.Selected.Render(">"+line.Fit(name, heatName-2)) + " "
		default:
			name = " " + name + " "
		}
		var b strings.Builder
		b.WriteString(name)
		for j := left; j < left+columns; j++ {
			b.WriteString(r.cell(&m, i, j))
		}
		out = append(out, b.String())
	}
	more := ""
	if columns < len(f.people) || rows < len(f.people) {
		more = fmt.Sprintf("   %d to %d of %d people, by %d to %d", top+1, top+rows, len(f.people), left+1, left+columns)
	}
	once, twice, often := c.Theme.Heat1.Render("░"), c.Theme.Heat2.Render("▒"), c.Theme.Heat3.Render("▓")
	legend := "· never  " + once + " once  " + twice + " twice  " + often + " more  ◆ always partners  × never meet"
	return append(out, line.Cut(legend+c.Theme.Dim.Render(more), c.Width), r.sentence(c, at))
}

// initials are what stands over a column.
func initials(name string) string { return ansi.Truncate(name, 2, "") }

// marks are the shapes of the map in the width of its cells, styled once for a frame.
type marks struct {
	self, apart, always string
	times               [4]string // never, once, twice, more
}

func marksOf(c ui.Context, width int) marks {
	pad := func(style lipgloss.Style, mark string) string {
		return style.Render(mark) + strings.Repeat(" ", width-line.Width(mark))
	}
	twice := func(mark string) string { return strings.Repeat(mark, width-1) } // with a gap to the next
	t := c.Theme
	return marks{
		self: pad(t.Dim, "╲"), apart: pad(t.Strong, "×"), always: pad(t.Strong, "◆"),
		times: [4]string{pad(t.Dim, "·"), pad(t.Heat1, twice("░")), pad(t.Heat2, twice("▒")), pad(t.Heat3, twice("▓"))},
	}
}

// cell is how often two people met, as a shape.
func (r *Rotation) cell(m *marks, i, j int) string {
	f := &r.facts
	if i == j {
		return m.self
	}
	t := f.at(i, j, !r.past)
	k := t.opponents
	if j > i {
		k = t.partners
	}
	pair := i*len(f.people) + j
	switch {
	case k == 0 && f.apart[pair]:
		return m.apart
	case j > i && f.always[pair]:
		return m.always
	}
	return m.times[min(k, len(m.times)-1)]
}

// sentence says the row of the cursor in words, so that nothing is told by shade alone.
func (r *Rotation) sentence(c ui.Context, at int) string {
	f := &r.facts
	type other struct {
		name  string
		times int
	}
	var again []other
	var never []string
	met := 0
	for j, id := range f.people {
		if j == at {
			continue
		}
		t := f.at(at, j, !r.past)
		switch k := t.partners + t.opponents; {
		case k == 0:
			never = append(never, c.Names.Short(id))
		default:
			met++
			if k > 1 {
				again = append(again, other{c.Names.Short(id), k})
			}
		}
	}
	slices.SortStableFunc(again, func(a, b other) int { return b.times - a.times })
	text := fmt.Sprintf("%s met %d of %d", c.Names.Full(f.people[at]), met, len(f.people)-1)
	if len(again) > 0 {
		var names []string
		for _, o := range again {
			names = append(names, fmt.Sprintf("%s %d", o.name, o.times))
		}
		text += ", more than once: " + some(names, 6)
	}
	if len(never) > 0 {
		text += "; not yet: " + some(never, 8)
	}
	return line.Cut(text, c.Width)
}

// some lists the first of some names and how many more there are.
func some(names []string, most int) string {
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return strings.Join(names[:most], ", ") + fmt.Sprintf(" and %d more", len(names)-most)
}
