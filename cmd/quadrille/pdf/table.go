package pdf

import (
	"strings"

	"club/quadrille/session/paper"
)

// tick is the box to tick, in millimetres.
const tick = 3.4

// gap is the room between two columns.
func (p *press) gap() float64 { return p.size * point * 0.8 }

// cellWidth is how wide the text of a cell is.
func (p *press) cellWidth(c paper.Column, text string) float64 {
	if text == "" && c.Tick {
		return tick
	}
	return p.width("", p.size, text)
}

// table are the rows of a table, each over a thin line.
func (p *press) table(t paper.Table) []line {
	if len(t.Rows) == 0 {
		return nil
	}
	widths := paper.Widths(p.like[:len(t.Columns)], p.gap(), p.wide)
	var out []line
	if heads := t.Heads(); heads != nil {
		out = append(out, p.row(t, heads, widths, "B", p.size*headSize))
		out[0].head = true
	}
	for _, row := range t.Rows {
		out = append(out, p.row(t, row, widths, "", p.size))
	}
	return out
}

// row is one row; a text that is too long goes on below, and a box stands where there is one to tick.
func (p *press) row(t paper.Table, row []string, widths []float64, style string, size float64) line {
	cells, most := make([][]string, len(row)), 1
	for i, text := range row {
		cells[i] = p.wrap(style, size, widths[i], text)
		most = max(most, len(cells[i]))
	}
	high := tall(size) * float64(most)
	return line{tall: high, draw: func(x, y float64) {
		left := x
		for i, c := range t.Columns {
			if row[i] == "" && c.Tick && style == "" {
				p.doc.SetLineWidth(0.2)
				p.doc.Rect(left, y+(high-tick)/2, tick, tick, "D")
			}
			for k, text := range cells[i] {
				at := left
				if c.Right {
					at += widths[i] - p.width(style, size, text)
				}
				p.write(style, size, at, y+base(size)+tall(size)*float64(k), text)
			}
			left += widths[i] + p.gap()
		}
		p.doc.SetLineWidth(0.08)
		p.doc.Line(x, y+high, x+p.wide, y+high)
	}}
}

// wrap breaks a text into lines that fit a room, between words where it can.
func (p *press) wrap(style string, size, room float64, text string) []string {
	if p.width(style, size, text) <= room+0.01 {
		return []string{text}
	}
	var out []string
	now := ""
	for word := range strings.FieldsSeq(text) {
		next := strings.TrimLeft(now+" "+word, " ")
		if p.width(style, size, next) <= room {
			now = next
			continue
		}
		if now != "" {
			out = append(out, now)
		}
		now = word
		for p.width(style, size, now) > room {
			n := p.prefix(style, size, room, now)
			out, now = append(out, now[:n]), now[n:]
		}
	}
	if now != "" {
		out = append(out, now)
	}
	return out
}

// prefix is the length in bytes of the letters of a word that fit a room, at least of one.
func (p *press) prefix(style string, size, room float64, word string) int {
	n := 0
	for i := range word {
		if n > 0 && p.width(style, size, word[:i]) > room {
			break
		}
		n = i
	}
	return max(n, len(string([]rune(word)[:1])))
}
