package calling

import (
	"fmt"
	"strings"

	"club/quadrille/session"
	"club/quadrille/session/calling"
	"club/quadrille/tui/line"
	"club/quadrille/tui/ui"
	"club/quadrille/tui/widget"
)

// The ways to draw a court, the largest first: how many lines it takes with the blank one below it, and the
// cells of its number.
type card struct{ rows, number int }

var (
	large = card{widget.BigRows + 1, 18}
	tall  = card{widget.DigitRows + 1, 10}
	flat  = card{1, 5}
)

// columnWidth is the least width of a column of courts where there are two.
const columnWidth = 80

// shape is how the courts are laid out.
type shape struct {
	card    card
	columns int
	whole   bool // all courts are shown; else the one that is read is drawn tall above a list of all
}

// shapeOf is the largest way in which so many courts fit on so many lines.
func shapeOf(width, height, calls int) shape {
	for _, k := range []card{large, tall} {
		for columns := 1; columns == 1 || columns == 2 && width >= 2*columnWidth; columns++ {
			if (calls+columns-1)/columns*k.rows <= height {
				return shape{k, columns, true}
			}
		}
	}
	return shape{flat, 1, false}
}

// body is how many lines the courts have, between the head and who sits out.
func (p *Page) body(c ui.Context) int { return max(1, c.Height-2-len(p.outLines(c))) }

// Lines implements ui.Screen.
func (p *Page) Lines(c ui.Context) []string {
	if len(p.list.Calls) == 0 {
		return []string{"", "  Nothing is called that must be read out.", "", "  After a call the courts stand here, in full names: v opens this page from the hall."}
	}
	out := []string{p.head(c), ""}
	out = append(out, p.courts(c)...)
	for len(out) < c.Height-len(p.outLines(c)) {
		out = append(out, "")
	}
	return append(out, p.outLines(c)...)
}

// head says what is read, and how far.
func (p *Page) head(c ui.Context) string {
	what := "The newest call"
	if p.list.Round > 0 {
		what = fmt.Sprintf("Round %d", p.list.Round)
	}
	k, all := len(p.list.Calls)-len(p.Left(p.list)), len(p.list.Calls)
	return line.Spread(c.Theme.Title.Render(what)+", to read aloud",
		widget.Blocks(min(all, 24), float64(k), float64(all))+c.Theme.Dim.Render(fmt.Sprintf("  %d of %d read", k, all)), c.Width)
}

// courts draws the courts in the largest way that fits.
func (p *Page) courts(c ui.Context) []string {
	s := shapeOf(c.Width, p.body(c), len(p.list.Calls))
	if !s.whole {
		return p.listed(c)
	}
	per := (len(p.list.Calls) + s.columns - 1) / s.columns
	width := c.Width / s.columns
	var out []string
	for row := range per {
		lines := make([]string, s.card.rows)
		for column := range s.columns {
			i := column*per + row
			if i >= len(p.list.Calls) {
				continue
			}
			for y, text := range p.card(c, i, s.card, width) {
				lines[y] += line.Fit(text, width)
			}
		}
		out = append(out, lines...)
	}
	return out
}

// listed draws the court that is read large, and all of them in a line each below it.
func (p *Page) listed(c ui.Context) []string {
	at, room := p.at(), p.body(c)
	var out []string
	if room >= tall.rows+2 {
		out = p.card(c, at, tall, c.Width)
		room -= tall.rows
	}
	from, until := line.Window(len(p.list.Calls), room, at)
	for i := from; i < until; i++ {
		out = append(out, p.line(c, i))
	}
	return out
}

// card draws a court with its number in digits, and the teams beside it.
func (p *Page) card(c ui.Context, i int, k card, width int) []string {
	g := p.list.Calls[i]
	read, at := p.read[g], i == p.at()
	number := number(string(g.Court), k)
	name, word := c.Theme.Strong, c.Theme.Dim
	state := ""
	switch {
	case read:
		name, state = c.Theme.Dim, c.Theme.Good.Render("  ✓ read")
	case at:
		state = c.Theme.Next.Render("  ▶ now")
	}
	out, last := make([]string, k.rows), k.rows-2
	room := width - 1 - 2 - k.number - 1
	texts := map[int]string{
		0:        name.Render(c.Names.FullTeamIn(g.A, room-line.Width(state))) + state,
		last / 2: word.Render("against" + noted(c, g.Court)),
		last:     name.Render(c.Names.FullTeamIn(g.B, room)),
	}
	for y := range k.rows - 1 {
		bar := "  "
		if at {
			bar = c.Theme.Cursor.Render("▌") + " "
		}
		digit := line.Fit(number[y], k.number)
		if read {
			digit = c.Theme.Dim.Render(digit)
		} else if at {
			digit = c.Theme.Next.Render(digit)
		}
		out[y] = line.Cut(bar+digit+" "+texts[y], width-1)
	}
	return out
}

// noted is what is particular about a court, to be read out with it.
func noted(c ui.Context, court session.CourtID) string {
	if k := c.Night().Court(court); k != nil && k.Note != "" {
		return "   court " + string(court) + ": " + k.Note
	}
	return ""
}

// number is a court's name in large digits, or as it is where it has letters.
func number(court string, k card) []string {
	out := make([]string, k.rows)
	switch {
	case strings.Trim(court, "0123456789") != "":
		out[(k.rows-1)/2] = court
	case k == large:
		rows := widget.Big(court, false)
		copy(out, rows[:])
	default:
		rows := widget.Digits(court, false)
		copy(out, rows[:])
	}
	if line.Width(out[0]) > k.number {
		out = make([]string, k.rows)
		out[(k.rows-1)/2] = court
	}
	return out
}

// line is a court in one line.
func (p *Page) line(c ui.Context, i int) string {
	g := p.list.Calls[i]
	mark := "  "
	if p.read[g] {
		mark = "✓ "
	}
	half := max(8, (c.Width-2-flat.number-len("  against  "))/2)
	text := mark + line.Fit(string(g.Court), flat.number) + line.Fit(c.Names.FullTeamIn(g.A, half), half) + "  against  " + c.Names.FullTeamIn(g.B, half)
	if note := noted(c, g.Court); line.Width(text)+line.Width(note) <= c.Width { // else it stands where the court is read
		text += note
	}
	text = line.Cut(text, c.Width)
	switch {
	case i == p.at():
		return c.Theme.Selected.Render(line.Fit(text, c.Width))
	case p.read[g]:
		return c.Theme.Dim.Render(text)
	}
	return text
}

// outLines name who sits out, with what comes next for each.
func (p *Page) outLines(c ui.Context) []string {
	if len(p.list.Out) == 0 {
		return nil
	}
	var parts []string
	for _, s := range p.list.Out {
		parts = append(parts, sitting(c, s))
	}
	lines := line.Wrap("Sits out: "+strings.Join(parts, "; "), c.Width)
	if most := max(1, c.Height/4); len(lines) > most {
		lines = append(lines[:most-1], line.Cut(strings.Join(lines[most-1:], " "), c.Width))
	}
	return append([]string{""}, lines...)
}

func sitting(c ui.Context, s calling.Sitting) string {
	if s.Round == 0 {
		return c.Names.Full(s.Person)
	}
	return fmt.Sprintf("%s (plays round %d, court %s)", c.Names.Full(s.Person), s.Round, s.Court)
}

// Click implements ui.Screen: a click chooses a court, a click on the chosen one marks it as read.
func (p *Page) Click(c ui.Context, x, y int) ui.Intent {
	i := p.under(c, x, y-2)
	switch {
	case i < 0:
		return nil
	case i == p.at():
		return p.mark(i)
	}
	p.chosen = p.list.Calls[i].Game
	return nil
}

// under is the index of the court at a cell below the head, -1 for none.
func (p *Page) under(c ui.Context, x, y int) int {
	calls, room := len(p.list.Calls), p.body(c)
	if y < 0 || y >= room || calls == 0 {
		return -1
	}
	s := shapeOf(c.Width, room, calls)
	i := -1
	if s.whole {
		per := (calls + s.columns - 1) / s.columns
		if row := y / s.card.rows; row < per {
			i = min(x/(c.Width/s.columns), s.columns-1)*per + row
		}
	} else {
		if room >= tall.rows+2 {
			if y < tall.rows {
				return p.at()
			}
			y, room = y-tall.rows, room-tall.rows
		}
		from, until := line.Window(calls, room, p.at())
		if from+y < until {
			i = from + y
		}
	}
	if i >= calls {
		return -1
	}
	return i
}
