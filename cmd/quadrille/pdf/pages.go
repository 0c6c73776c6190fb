package pdf

import "fmt"

// placed is a line at its place.
type placed struct {
	line
	x, y float64
}

// place is where the next line goes.
type place struct {
	page, column int
	y            float64
}

// pages places all lines of the sheet. A block that does not fit what is left of a column begins in the next one; one
// that is higher than a page goes on under its heading.
func (p *press) pages() [][]placed {
	out := [][]placed{nil}
	head := p.head()
	at := place{y: margin}
	for _, l := range head {
		out[0] = append(out[0], placed{l, margin, at.y})
		at.y += l.tall
	}
	first := at.y
	top := func() float64 {
		if at.page == 0 {
			return first
		}
		return margin
	}
	next := func() {
		if at.column++; at.column == p.sheet.Beside {
			at.page, at.column = at.page+1, 0
			out = append(out, nil)
		}
		at.y = top()
	}
	put := func(l line) {
		x := margin + float64(at.column)*(p.wide+between)
		out[at.page] = append(out[at.page], placed{l, x, at.y})
		at.y += l.tall
	}
	for _, b := range p.sheet.Blocks {
		lines := p.block(b)
		if at.y > top() && at.y+height(lines) > p.bottom() {
			next()
		}
		var heads []line
		for _, l := range lines {
			if at.y+l.tall > p.bottom()+0.01 && at.y > top() {
				if l.air {
					continue
				}
				next()
				for _, h := range heads {
					put(h)
				}
			}
			if l.head {
				heads = append(heads, l)
			}
			put(l)
		}
	}
	return out
}

// draw draws the pages, each with its number at the foot.
func (p *press) draw(pages [][]placed) {
	const size = 8
	for i, page := range pages {
		p.doc.AddPage()
		for _, l := range page {
			l.draw(l.x, l.y)
		}
		foot := p.on.tall - margin
		number := fmt.Sprintf("page %d of %d", i+1, len(pages))
		p.write("", size, margin, foot, cut(p, p.sheet.Title, size, p.on.wide-2*margin-30))
		p.write("", size, p.on.wide-margin-p.width("", size, number), foot, number)
	}
}
