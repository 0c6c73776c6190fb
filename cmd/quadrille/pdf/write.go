package pdf

import (
	"fmt"
	"io"
	"slices"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"github.com/go-fonts/dejavu/dejavusanscondensed"

	"club/quadrille/session/paper"
)

// Measures of a page, in millimetres.
const (
	margin  = 13.0 // most printers reach that far
	footing = 9.0  // for the foot, above the margin
	between = 9.0  // two blocks side by side
	point   = 25.4 / 72
	leading = 1.42 // height of a line, in heights of its letters
)

// font is the family of the one face.
const font = "dejavu"

// Bold letters are those of the one face with a stroke around them, in heights of the letters: a second face would make
// the program 0.7 MB larger.
const (
	bold   = "B"
	stroke = 0.045

	filled, filledAndStroked = 0, 2 // text rendering modes (ISO 32000-1, 9.3.6)
)

// press draws one sheet.
type press struct {
	doc   *fpdf.Fpdf
	sheet paper.Sheet
	on    Size
	size  float64   // of plain text, in points
	wide  float64   // of a block
	like  []float64 // of the columns of the tables, as wide as their texts; set by measure
}

// Write draws a sheet on pages of a size. Made is when; equal sheets made at one time give equal bytes.
func Write(w io.Writer, s paper.Sheet, on Size, made time.Time) error {
	p := newPress(s, on, made)
	p.choose()
	p.draw(p.pages())
	if err := p.doc.Output(w); err != nil {
		return fmt.Errorf("the PDF could not be made: %w", err)
	}
	return nil
}

// newPress is ready to draw a sheet.
func newPress(s paper.Sheet, on Size, made time.Time) *press {
	p := &press{sheet: s, on: on, doc: fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: on.wide, Ht: on.tall}})}
	p.doc.AddUTF8FontFromBytes(font, "", slices.Clone(dejavusanscondensed.TTF))
	p.doc.SetAutoPageBreak(false, 0)
	p.doc.SetCatalogSort(true)
	p.doc.SetCreationDate(made)
	p.doc.SetModificationDate(made)
	p.doc.SetTitle(s.Title, true)
	p.doc.SetProducer("Quadrille", true)
	p.wide = (on.wide - 2*margin - between*float64(s.Beside-1)) / float64(s.Beside)
	return p
}

// together is how many rows of a table are too many to keep on one page: a list goes on over pages in its own size.
const together = 18

// sizes of plain text, in points: the largest that is tried, and the smallest, below which texts are broken.
func (p *press) sizes() (most, least float64) {
	if p.sheet.Large {
		return 24, 13
	}
	return 10.5, 8
}

// choose takes the largest size at which every row is one line and every block fits a page.
func (p *press) choose() {
	most, least := p.sizes()
	for p.size = most; p.size > least; p.size -= 0.5 {
		if p.fits() {
			return
		}
	}
	p.size = least
	p.measure()
}

func (p *press) fits() bool {
	p.measure()
	for _, b := range p.sheet.Blocks {
		if p.least(b.Table) > p.wide {
			return false
		}
	}
	room := p.bottom() - p.below(p.head())
	for _, b := range p.sheet.Blocks {
		if len(b.Table.Rows) <= together && height(p.block(b)) > room {
			return false
		}
	}
	return true
}

// least is how wide a table is whose long texts take half of the room at most.
func (p *press) least(t paper.Table) float64 {
	sum := p.gap() * float64(max(0, len(t.Columns)-1))
	for i, c := range t.Columns {
		if c.Long {
			sum += min(p.like[i], p.wide/2)
			continue
		}
		sum += p.like[i]
	}
	return sum
}

// measure finds how wide the columns of all tables would be, so that they stand one under the other.
func (p *press) measure() {
	p.like = nil
	for _, b := range p.sheet.Blocks {
		for len(p.like) < len(b.Table.Columns) {
			p.like = append(p.like, 0)
		}
		for i, c := range b.Table.Columns {
			p.like[i] = max(p.like[i], p.width("B", p.size*headSize, c.Head))
			for _, row := range b.Table.Rows {
				p.like[i] = max(p.like[i], p.cellWidth(c, row[i]))
			}
		}
	}
}

// width is that of a text in a face and size.
func (p *press) width(style string, size float64, text string) float64 {
	p.doc.SetFont(font, "", size)
	room := 0.1 // against what is lost by rounding
	if style == bold {
		room += size * point * stroke
	}
	return p.doc.GetStringWidth(drawn(text)) + room
}

// write puts a text with its base line at a height.
func (p *press) write(style string, size, x, y float64, text string) {
	p.doc.SetFont(font, "", size)
	if style != bold {
		p.doc.Text(x, y, drawn(text))
		return
	}
	p.doc.SetLineWidth(size * point * stroke)
	p.doc.SetTextRenderingMode(filledAndStroked)
	p.doc.Text(x, y, drawn(text))
	p.doc.SetTextRenderingMode(filled)
}

// tall is the height of a line in a size.
func tall(size float64) float64 { return size * point * leading }

// base is how far below the top of a line its letters stand.
func base(size float64) float64 { return size * point * 1.05 }

// bottom is where blocks end.
func (p *press) bottom() float64 { return p.on.tall - margin - footing }
