package table

import (
	"fmt"
	"strings"

	"club/quadrille/session"
	"club/quadrille/session/standings"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// From these widths on the table has bars, and stands beside the line that the cursor is on.
const (
	barWidth   = 110
	sideWidth  = 180
	sideRoom   = 62 // of what stands beside the table
	longestRun = 5  // games of the form
	leastWhy   = 24 // cells in which a reason says something
	usualWhy   = 34 // cells in which most reasons are whole
)

// tonightSheet is the standings of the newest night.
func (f *facts) tonightSheet(c ui.Context) sheet {
	s := sheet{
		count: len(f.places),
		empty: "No game is over yet. The table fills with the first score.",
		foot:  "Order: " + standings.Order + ".",
		note:  f.note,
		about: func(i int) string { return f.reason(c, i) },
	}
	if c.Width >= sideWidth {
		s.width = c.Width - sideRoom - 3
		s.beside = func(i int) []string { return f.beside(c, i, sideRoom) }
	}
	if few := f.few(); few > 0 {
		s.foot = fmt.Sprintf("° fewer than %d games, half of the most. ", f.least) + s.foot
	}
	for _, p := range f.places {
		id := session.PersonID("")
		if len(p.People) > 0 {
			id = p.People[0]
		}
		s.people = append(s.people, id)
	}
	longest := 0
	for _, p := range f.places {
		longest = max(longest, line.Width(p.Name))
	}
	l := layoutOf(c, longest)
	s.head = l.cells("", "name", "", "last 5", "games", "won", "share", "", "diff", "", "why here")
	s.row = func(i int) string { return f.row(c, l, i) }
	s.strong = func(i int) bool { return f.places[i].Rank == 1 }
	return s
}

// few is how many lines have fewer games than a line should.
func (f *facts) few() int {
	k := 0
	for _, p := range f.places {
		if p.Games < f.least {
			k++
		}
	}
	return k
}

// layout is the widths of the columns that depend on the terminal.
type layout struct{ name, share, diff, why int }

// layoutOf lays the columns out for names of which the longest has so many cells.
func layoutOf(c ui.Context, longest int) layout {
	l := layout{name: max(10, min(22, c.Width-57))}
	width := c.Width
	if c.Width >= sideWidth {
		width -= sideRoom + 3
	}
	if width >= barWidth {
		l.share, l.diff = 7, 11
	}
	if l.why = width - l.name - l.share - l.diff - 49; l.why < leastWhy {
		l.name, l.why = min(30, l.name+max(0, l.why)), 0 // the reason stands below the table
	}
	if more := min(longest-l.name, l.why-usualWhy); more > 0 {
		l.name, l.why = l.name+more, l.why-more
	}
	return l
}

// cells lays a line out.
func (l layout) cells(place, name, moved, form, games, won, share, shareBar, diff, diffBar, why string) string {
	text := line.Right(place, 4) + " " + line.Fit(name, l.name) + line.Right(moved, 4) + "  " + line.Fit(form, longestRun+1) +
		line.Right(games, 6) + line.Right(won, 6)
	if l.share > 0 {
		text += "  " + line.Fit(shareBar, l.share)
	}
	text += line.Right(share, 6) + line.Right(diff, 6)
	if l.diff > 0 {
		text += " " + line.Fit(diffBar, l.diff)
	}
	if l.why > 0 {
		text += "  " + line.Cut(why, l.why)
	}
	return text
}

// row is a line of the table.
func (f *facts) row(c ui.Context, l layout, i int) string {
	p := f.places[i]
	won := fmt.Sprint(p.Wins)
	if p.Draws > 0 {
		won += fmt.Sprintf("+%dd", p.Draws)
	}
	games := fmt.Sprint(p.Games)
	if p.Games < f.least {
		games = "°" + games
	}
	name := p.Name
	if pair := p.People; len(pair) == 2 && line.Width(name) > l.name {
		name = c.Names.FullTeamIn(session.Team{pair[0], pair[1]}, l.name) // of both something can be read
	}
	return l.cells(fmt.Sprint(p.Rank), name, line.Moved(p.Moved()), form(p.Form), games, won, line.Percent(p.WinShare),
		widget.Blocks(l.share, p.WinShare, 1), fmt.Sprintf("%+d", p.Difference), difference(l.diff, float64(p.Difference), f.wide), f.reason(c, i))
}

// form is the last games as marks, the newest last.
func form(all []session.Outcome) string {
	var b strings.Builder
	for _, o := range all[max(0, len(all)-longestRun):] {
		b.WriteString(map[session.Outcome]string{session.Won: "✓", session.Lost: "·", session.Level: "="}[o])
	}
	return b.String()
}

// difference is a bar to the right of a line for more points than the others, and to the left for fewer.
func difference(width int, value, most float64) string {
	if width < 3 {
		return ""
	}
	half := width / 2
	bar := widget.Blocks(half, max(value, -value), max(1, most))
	if value < 0 {
		return line.Right(bar, half) + "│"
	}
	return strings.Repeat(" ", half) + "│" + bar
}

// reason is why a line stands where it does.
func (f *facts) reason(c ui.Context, i int) string {
	if i+1 >= len(f.places) {
		return ""
	}
	return f.places[i].Parted.Words(short(c, f.places[i+1]))
}

// short is the short name of a line.
func short(c ui.Context, p session.Place) string {
	switch len(p.People) {
	case 1:
		return c.Names.Short(p.People[0])
	case 2:
		return c.Names.Team(session.Team{p.People[0], p.People[1]})
	}
	return p.Name
}
