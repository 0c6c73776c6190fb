package board

import (
	"fmt"
	"strings"

	"club/quadrille/session/public"
	"club/quadrille/tui/line"
	"club/quadrille/tui/widget"
)

// panel is a list with a heading that takes its turn beside or after the courts.
type panel struct {
	title string
	items []string
}

// panels are what there is to tell besides the courts.
func panels(v *public.View) []panel {
	var out []panel
	add := func(title string, items []string) {
		if len(items) > 0 {
			out = append(out, panel{title, items})
		}
	}
	switch {
	case v.Next.Round == 0 && len(v.Next.Games) > 0:
		g := v.Next.Games[0]
		add("Get ready", append(append([]string{}, g.A...), g.B...))
	case planned(v):
		add("Sits out", v.Next.Out)
	case v.Next.Round > 0:
		add(fmt.Sprintf("Sits out in round %d", v.Next.Round), v.Next.Out)
	}
	var bench []string
	for _, w := range v.Bench {
		bench = append(bench, w.Name)
	}
	if v.Next.Round == 0 {
		add("On the bench", bench)
	}
	var places []string
	for _, p := range v.Standings {
		places = append(places, fmt.Sprintf("%d. %s %d/%d", p.Rank, strings.Join(p.Names, " & "), p.Wins, p.Games))
	}
	var emergency []string
	for _, l := range v.Emergency {
		emergency = append(emergency, line.Wrap(l.Label+": "+l.Text, cardWidth)...)
	}
	add("In an emergency", emergency)
	add("Standings", places[:min(len(places), mostPlaces)])
	return out
}

// cardWidth is how wide the lines of the emergency card are at most, in cells of ordinary text.
const cardWidth = 36

// mostPlaces is how far down the standings go: who wants more asks at the desk.
const mostPlaces = 24

// nextCourts are the courts of the round that comes next, nil where the courts show it already, or nothing is
// known of it.
func nextCourts(v *public.View) []public.Court {
	if v.Next.Round == 0 || planned(v) {
		return nil
	}
	var out []public.Court
	for _, g := range v.Next.Games {
		out = append(out, public.Court{Name: g.Court, State: public.Planned, A: g.A, B: g.B})
	}
	return out
}

// planned tells whether the courts show the next round already.
func planned(v *public.View) bool {
	for _, c := range v.Courts {
		if c.State == public.Planned {
			return true
		}
	}
	return false
}

// layout is how a list is drawn in some room.
type layout struct {
	size          widget.Size
	width         int // of a column
	columns, rows int // of items on a page
	pages         int
}

// listPages is on how many pages a list may stand to be drawn larger.
const listPages = 2

// list finds the layout of a list: the largest letters with which it takes no more than listPages pages.
func (p pen) list(items []string, width, height int) layout {
	for _, s := range append(append([]widget.Size{}, widget.Sizes...), none) {
		l := layout{size: s, rows: max(1, (height+leading(s))/(rowsOf(s)+leading(s)))}
		for _, item := range items {
			w, ok := p.width(item, s)
			if !ok {
				w = line.Width(item)
			}
			l.width = max(l.width, w)
		}
		l.columns = max(1, (width+gap)/(l.width+gap))
		l.width = min(l.width, width)
		l.pages = (len(items) + l.columns*l.rows - 1) / (l.columns * l.rows)
		if s == none || rowsOf(s) <= height && p.most(items, s, width) && l.pages <= listPages {
			return l
		}
	}
	return layout{}
}

// panel draws one page of a list under its heading.
func (b *Board) panel(p panel, l layout, page, width, height int) []string {
	title := b.pen.draw(p.title, width, titleSize(height), b.theme.Title)
	out := append(title, b.theme.Frame.Render(strings.Repeat("─", width)))
	each := l.columns * l.rows
	from := min(page*each, len(p.items))
	shown := p.items[from:min(from+each, len(p.items))]
	rows := min(l.rows, len(shown))
	for r := range rows {
		var lines []string
		for c := range l.columns {
			i := c*rows + r
			if i >= len(shown) {
				break
			}
			item := b.pen.draw(shown[i], l.width, l.size, b.theme.Strong)
			if c == 0 {
				lines = item
				continue
			}
			lines = line.Beside(lines, item, c*(l.width+gap)-gap, gap)
		}
		out = append(out, lines...)
		for range leading(l.size) {
			out = append(out, "")
		}
	}
	return out
}

// titleSize is the size of a heading over a list of some height.
func titleSize(height int) widget.Size {
	switch {
	case height < 12:
		return none
	case height < 40:
		return widget.Size{X: 1, Y: 1}
	}
	return widget.Size{X: 2, Y: 2}
}
