package pdf

import (
	"fmt"

	"club/quadrille/session/paper"
)

// Sizes in those of plain text.
const (
	titleSize   = 1.35
	headingSize = 1.2
	headSize    = 0.85 // of the heads of columns
	markSize    = 0.7
)

// Measures of a slip, in millimetres.
const (
	scoreWide, scoreTall = 18.0, 10.0
	cross                = 5.8  // a number to cross off
	corner               = 21.0 // at the right of a slip's heading stays a free corner so tall, for a court's code
)

// line is a part of a block that is not cut by the end of a page.
type line struct {
	tall float64
	head bool // stands above the rest again where a block goes on
	air  bool // nothing but room, which the end of a page needs not
	draw func(x, y float64)
}

func height(lines []line) (sum float64) {
	for _, l := range lines {
		sum += l.tall
	}
	return sum
}

// head is the title of the sheet with what stands under it, on the first page only.
func (p *press) head() []line {
	room := p.on.wide - 2*margin
	var out []line
	code, wide := p.code(p.sheet.Code, square)
	if wide > 0 {
		room -= wide + 2
		out = append(out, line{draw: func(x, y float64) { code(x+room+2, y) }})
	}
	out = append(out, p.text("B", min(p.size*titleSize, 20), room, p.sheet.Title)...)
	for _, text := range p.sheet.Under {
		out = append(out, p.text("", min(p.size, 11), room, text)...)
	}
	return append(out, blank(max(2, wide+2-height(out))))
}

// below is where blocks begin under lines at the top.
func (p *press) below(lines []line) float64 { return margin + height(lines) }

// block are the lines of a block.
func (p *press) block(b paper.Block) []line {
	var out []line
	if b.Heading != "" {
		out = append(out, p.heading(b))
	}
	out = append(out, p.table(b.Table)...)
	out = append(out, p.lines(b)...)
	for _, t := range b.Tallies {
		out = append(out, p.tally(t)...)
	}
	if b.Cut {
		return append(out, p.cut())
	}
	return append(out, blank(p.size*point*0.9))
}

func blank(high float64) line { return line{tall: high, air: true, draw: func(float64, float64) {}} }

// heading is the heading of a block with its mark.
func (p *press) heading(b paper.Block) line {
	size, small := p.size*headingSize, p.size*markSize
	high := tall(size)
	code, wide := p.code(b.Code, slipSquare)
	if len(b.Tallies) > 0 {
		high = max(high, max(corner, wide+slipFree)-height(p.lines(b))) // the sentences follow it beside the corner
	}
	return line{tall: high, head: true, draw: func(x, y float64) {
		if wide > 0 {
			code(x+p.wide-wide, y)
		}
		p.write("B", size, x, y+base(size), cut(p, b.Heading, size, p.wide-wide-slipFree-p.width("", small, b.Mark)))
		if b.Mark != "" && len(b.Tallies) == 0 {
			p.write("", small, x+p.wide-p.width("", small, b.Mark), y+base(size), b.Mark)
		}
	}}
}

// lines are the sentences of a block.
func (p *press) lines(b paper.Block) (out []line) {
	room := p.wide
	if _, wide := p.code(b.Code, slipSquare); wide > 0 {
		room -= wide + slipFree
	}
	for _, text := range b.Lines {
		out = append(out, p.text("", p.size*0.92, room, text)...)
	}
	return out
}

// cut shortens a heading to a width.
func cut(p *press, text string, size, room float64) string {
	if p.width("B", size, text) <= room {
		return text
	}
	letters := []rune(text)
	for len(letters) > 1 && p.width("B", size, string(letters)+"…") > room {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}

// text is a sentence on as many lines as it needs.
func (p *press) text(style string, size, room float64, text string) []line {
	var out []line
	for _, part := range p.wrap(style, size, room, text) {
		out = append(out, line{tall: tall(size), draw: func(x, y float64) { p.write(style, size, x, y+base(size), part) }})
	}
	return out
}

// tally is a team's part of a slip: its name, a box for the score, and numbers to cross off.
func (p *press) tally(t paper.Tally) []line {
	names := p.wrap("B", p.size, p.wide-scoreWide-2, t.Team)
	high := max(scoreTall+1, tall(p.size)*float64(len(names)))
	out := []line{{tall: high, draw: func(x, y float64) {
		for i, text := range names {
			p.write("B", p.size, x, y+base(p.size)+tall(p.size)*float64(i)+2, text)
		}
		p.doc.SetLineWidth(0.4)
		p.doc.Rect(x+p.wide-scoreWide, y, scoreWide, scoreTall, "D")
	}}}
	each := max(1, int(p.wide/cross))
	for from := 0; from < t.Points; from += each {
		out = append(out, line{tall: cross, draw: func(x, y float64) { p.numbers(x, y, from, min(each, t.Points-from)) }})
	}
	return append(out, blank(1.5))
}

// numbers draws some numbers to cross off, from the one after from on.
func (p *press) numbers(x, y float64, from, count int) {
	const size = 7
	p.doc.SetLineWidth(0.1)
	for i := range count {
		text := fmt.Sprint(from + i + 1)
		left := x + cross*float64(i)
		p.doc.Rect(left, y, cross, cross, "D")
		p.write("", size, left+(cross-p.width("", size, text))/2, y+cross*0.66, text)
	}
}

// cut is a line along which the paper is cut.
func (p *press) cut() line {
	return line{tall: 6, draw: func(x, y float64) {
		p.doc.SetLineWidth(0.15)
		p.doc.SetDashPattern([]float64{1.5, 1.5}, 0)
		p.doc.Line(x, y+3, x+p.wide, y+3)
		p.doc.SetDashPattern(nil, 0)
	}}
}
