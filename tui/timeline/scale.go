package timeline

import (
	"fmt"
	"strings"
	"time"

	"club/quadrille/session/timeline"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

const (
	labelWidth = 6 // of a court's name
	sumWidth   = 8 // of a court's idle time
	leastBlock = 7 // cells of a usual game in which its score can be read
)

// scale is which time stands where.
type scale struct {
	from   time.Time
	cell   time.Duration // time of a cell
	cells  int
	first  int // row shown first
	rows   int // rows shown
	height int // lines of a row
}

// scale lays the page out, so that the cursor is seen.
func (p *Page) scale(c ui.Context) scale {
	t := p.night
	s := scale{from: t.From, cells: max(8, c.Width-labelWidth-sumWidth), height: 1}
	all := max(t.Until.Sub(t.From), 30*time.Minute)
	s.cell = (all + time.Duration(s.cells) - 1) / time.Duration(s.cells)
	if close := t.Expected / leastBlock; !p.whole && close > 0 && close < s.cell {
		s.cell = close
		s.from = p.begin(s, all)
	}
	room := c.Height - 2 - p.footRows(c)
	for s.height < 3 && (s.height+1)*len(t.Rows) <= room {
		s.height++
	}
	row, _ := p.at()
	from, until := line.Window(len(t.Rows), max(1, room/s.height), row)
	s.first, s.rows = from, until-from
	return s
}

// footRows is how many lines the foot takes at most.
func (p *Page) footRows(c ui.Context) int {
	if c.Height > 20 {
		return min(len(p.night.Holds), 2) + 5
	}
	return max(1, c.Height/4)
}

// begin is the time at the left where not all of the night fits: the cursor stands a little right of the middle.
func (p *Page) begin(s scale, all time.Duration) time.Time {
	at := p.night.Now
	if row, block := p.at(); block >= 0 {
		at = p.night.Rows[row].Blocks[block].From
	}
	span := s.cell * time.Duration(s.cells)
	from := at.Add(-span * 6 / 10)
	if last := p.night.From.Add(all - span); from.After(last) {
		from = last
	}
	if from.Before(p.night.From) {
		from = p.night.From
	}
	return from
}

// time is when a cell begins.
func (s scale) time(cell int) time.Time { return s.from.Add(time.Duration(cell) * s.cell) }

// cellOf is the cell in which a time lies; it may be out of sight.
func (s scale) cellOf(t time.Time) int {
	d := t.Sub(s.from)
	if d < 0 {
		return -1
	}
	return int(d / s.cell)
}

// rowAt is the row at a line of the page.
func (s scale) rowAt(y int) (int, bool) {
	row := (y - 2) / s.height
	return s.first + row, y >= 2 && row < s.rows
}

// clocks are the times of day above the courts, so far apart that they can be read.
func (s scale) clocks(c ui.Context) string {
	step := 5 * time.Minute
	for step/s.cell < 9 {
		step *= 2
	}
	out, at := strings.Builder{}, 0
	for t := s.from.Truncate(step); ; t = t.Add(step) {
		cell := s.cellOf(t)
		if cell >= s.cells-4 {
			break
		}
		if t.Before(s.from) || cell < at {
			continue
		}
		fmt.Fprintf(&out, "%s%s", strings.Repeat(" ", cell-at), t.In(c.Now.Location()).Format("15:04"))
		at = cell + 5
	}
	return c.Theme.Dim.Render(line.Fit("", labelWidth) + out.String())
}

// use is how many courts were in use, as a run of heights.
func (s scale) use(c ui.Context, t timeline.Timeline) string {
	var run []float64
	for cell := range s.cells {
		if at := s.time(cell); !at.After(t.Now) {
			run = append(run, float64(t.InUse(at)))
		}
	}
	return c.Theme.Dim.Render(line.Fit(" use", labelWidth)) + c.Theme.Frame.Render(widget.Run(len(run), run))
}
