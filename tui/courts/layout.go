package courts

import (
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// kind is how a court is drawn: the larger the screen, the more of it is seen from afar.
type kind uint8

const (
	oneLine   kind = iota // number, names and score in a line
	compact               // three lines, without a frame
	card                  // five lines, with the net in the middle
	fromAbove             // to scale, with everybody in a box and digits that are read across the hall
)

// size is the least room of a kind with the space around it.
type size struct {
	kind          kind
	width, height int
}

// sizes are those that courts are drawn in, the largest first. A court to scale is 44 by 20 ft, and a cell
// is about twice as high as it is wide.
var sizes = []size{
	{fromAbove, 83, 17},
	{fromAbove, 72, 15},
	{fromAbove, 61, 13},
	{fromAbove, 50, 11},
	{card, 36, 6},
	{compact, 26, 3},
	{oneLine, 38, 1},
}

// asideWidth is the column beside the courts that answers what comes next, where the screen is wide enough.
const (
	asideWidth = 50
	wide       = 160
	panelRows  = 2 // under the courts: the selected one in full, or the score being typed
)

// grid is where the courts lie.
type grid struct {
	size
	columns, rows int
	top, shown    int // the first row shown, and how many
	courts        int
	space         int // rows for the courts
	aside         int // cells of the column beside them, 0 for none
	below         int // rows under them for who waits and who leads
}

// layout chooses the largest size in which all courts are seen at once. Only when not even a line each
// fits do they scroll.
func (s *Courts) layout(c ui.Context) grid {
	g := grid{courts: len(c.Hall.Courts)}
	if g.courts == 0 {
		return g
	}
	width := c.Width
	if c.Width >= wide {
		g.aside = asideWidth
		width -= asideWidth
	}
	g.space = max(1, c.Height-panelRows)
	if g.aside == 0 && g.space >= leastBelow+8 {
		g.below = leastBelow
	}
	for _, sz := range sizes {
		g.size, g.columns = sz, max(1, min(g.courts, width/sz.width))
		g.rows = (g.courts + g.columns - 1) / g.columns
		g.columns = (g.courts + g.rows - 1) / g.rows // even rows: four courts as two and two, not as three and one
		if width < sz.width && sz.kind != oneLine || sz.kind == fromAbove && g.aside == 0 {
			continue
		}
		if g.rows*sz.height <= g.space-g.below {
			break
		}
		if g.below > 0 && g.rows*sz.height <= g.space && sz.kind <= compact {
			g.below = g.space - g.rows*sz.height
			break
		}
	}
	most := map[kind]int{oneLine: 90, compact: 60, card: 66, fromAbove: g.width}[g.kind]
	g.width = max(g.width, min(most, width/g.columns))
	g.width = min(g.width, width)
	from, until := line.Window(g.rows, max(1, (g.space-g.below)/g.height), s.at(c)/g.columns)
	g.top, g.shown = from, until-from
	return g
}

// leastBelow is the least room for who waits and who leads.
const leastBelow = 2

// find tells which court lies at a cell.
func (g grid) find(x, y int) (int, bool) {
	if g.width == 0 || x < 0 || y < 0 || y >= g.shown*g.height || x >= g.columns*g.width {
		return 0, false
	}
	i := (g.top+y/g.height)*g.columns + x/g.width
	return i, i < g.courts
}
