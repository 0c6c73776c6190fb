package timeline

import (
	"fmt"
	"strings"
	"time"

	"github.com/charmbracelet/lipgloss"

	"club/quadrille/session/timeline"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
)

// piece is a part of a line: some cells in one style.
type piece struct {
	from, until int
	text        string
	style       *lipgloss.Style // nil for none
}

// rowLines draw a court: its blocks with their scores, and the teams below where there is room.
func (p *Page) rowLines(c ui.Context, s scale, i int) []string {
	r := p.night.Rows[i]
	row, block := p.at()
	label := line.Fit(" "+string(r.Court), labelWidth-1) + " "
	if i == row {
		label = c.Theme.Cursor.Render("▌") + c.Theme.Strong.Render(line.Fit(string(r.Court), labelWidth-2)) + " "
	}
	var bars, upper, lower []piece
	for k, b := range r.Blocks {
		from, until, ok := s.span(b.From, b.Until)
		if !ok {
			continue
		}
		width := until - from
		bar, style := p.bar(c, b, width)
		if i == row && k == block {
			style = &c.Theme.Selected
		}
		bars = append(bars, piece{from, until, bar, style})
		if b.A[0] == "" || width < 5 {
			continue
		}
		quiet := &c.Theme.Dim
		if b.Kind == timeline.Going {
			quiet = nil
		}
		upper = append(upper, piece{from, until, line.Fit(c.Names.Team(b.A), width-1), quiet})
		lower = append(lower, piece{from, until, line.Fit(c.Names.Team(b.B), width-1), quiet})
	}
	sum := line.Right(fmt.Sprintf("%d′", int(r.Idle.Minutes()+0.5)), sumWidth)
	out := []string{label + p.join(c, s, bars, i, true) + c.Theme.Dim.Render(sum)}
	blank := line.Fit("", labelWidth)
	if s.height > 1 {
		out = append(out, blank+p.join(c, s, upper, i, false))
	}
	if s.height > 2 {
		out = append(out, blank+p.join(c, s, lower, i, false))
	}
	return out
}

// span is the cells of a stretch of time, as far as they are seen; at least one cell for what is in sight.
func (s scale) span(a, b time.Time) (from, until int, ok bool) {
	if !b.After(s.from) {
		return 0, 0, false
	}
	from, until = max(0, s.cellOf(a)), min(s.cells, s.cellOf(b))
	if from >= s.cells {
		return 0, 0, false
	}
	return from, max(until, from+1), true
}

// bar is a block in so many cells: the score first, then its length.
func (p *Page) bar(c ui.Context, b timeline.Block, width int) (string, *lipgloss.Style) {
	text, glyph, style := p.score(b), "▇", &c.Theme.Heat1
	switch b.Kind {
	case timeline.Going:
		glyph, style = "━", &c.Theme.Strong
	case timeline.Forecast:
		glyph, style = "┄", &c.Theme.Dim
		if b.Round > 0 {
			text = fmt.Sprintf("r%d", b.Round)
		}
	}
	if text != "" {
		text += " "
	}
	if line.Width(text) > width {
		text = ""
	}
	return text + strings.Repeat(glyph, max(0, width-line.Width(text))), style
}

// join lays pieces on a line, with what stands between them: idle, closed and held time, now and closing.
func (p *Page) join(c ui.Context, s scale, pieces []piece, row int, marks bool) string {
	var b strings.Builder
	at := 0
	for _, x := range pieces {
		from := max(x.from, at)
		if from >= x.until {
			continue
		}
		p.gap(&b, c, s, row, at, from, marks)
		text := line.Fit(x.text, x.until-from)
		if x.style != nil {
			text = x.style.Render(text)
		}
		b.WriteString(text)
		at = x.until
	}
	p.gap(&b, c, s, row, at, s.cells, marks)
	return b.String()
}

// gap draws the cells in which nobody plays.
func (p *Page) gap(b *strings.Builder, c ui.Context, s scale, row, from, until int, marks bool) {
	t := p.night
	now, closing := s.cellOf(t.Now), -1
	if !t.Closing.IsZero() {
		closing = s.cellOf(t.Closing)
	}
	for cell := from; cell < until; cell++ {
		when := s.time(cell).Add(s.cell / 2)
		in := func(spans []timeline.Span) bool {
			for _, h := range spans {
				if !when.Before(h.From) && when.Before(h.Until) {
					return true
				}
			}
			return false
		}
		switch {
		case cell == now && t.Night.IsOpen():
			b.WriteString(c.Theme.Next.Render("┃"))
		case cell == closing:
			b.WriteString(c.Theme.Warn.Render("┊"))
		case !marks || when.After(t.Now):
			b.WriteByte(' ')
		case in(t.Holds):
			b.WriteString(c.Theme.Bad.Render("▒"))
		case in(t.Rows[row].Shut):
			b.WriteString(c.Theme.Dim.Render("╳"))
		default:
			b.WriteString(c.Theme.Frame.Render("·"))
		}
	}
}
