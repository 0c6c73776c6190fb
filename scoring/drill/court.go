package drill

// The court in feet, measured to the outside of the lines (2.A, 2.B), and the net in inches.
const (
	Length    = 44 // baseline to baseline, 13.41 m
	Width     = 20 // sideline to sideline, 6.10 m
	Kitchen   = 7  // from the net to the kitchen line, 2.13 m; the line belongs to the kitchen
	NetSide   = 36 // inches at the sidelines, 0.914 m
	NetCentre = 34 // inches in the middle, 0.864 m
)

// Line is a line of the court by its name, in feet from the corner of the left baseline and the upper sideline.
type Line struct {
	Name           string
	X1, Y1, X2, Y2 int
}

// Lines are the lines of the court, seen from above with the net upright in the middle, and the net.
func Lines() []Line {
	const left, right = Length/2 - Kitchen, Length/2 + Kitchen
	return []Line{
		{"sideline", 0, 0, Length, 0},
		{"sideline", 0, Width, Length, Width},
		{"centre line", 0, Width / 2, left, Width / 2},
		{"centre line", right, Width / 2, Length, Width / 2},
		{"kitchen line", left, 0, left, Width},
		{"kitchen line", right, 0, right, Width},
		{"baseline", 0, 0, 0, Width},
		{"baseline", Length, 0, Length, Width},
		{"net", Length / 2, 0, Length / 2, Width},
	}
}

// A character of a terminal is about twice as high as it is wide, so that a column of one foot and a row of two
// draw the court to scale.
const feetPerRow = 2

// canvas is a drawing in plain characters.
type canvas struct {
	rows   [][]byte
	margin int // columns left of the court, for a server behind the baseline
}

// newCourt draws the lines of a court between two margins.
func newCourt(margin int) canvas {
	c := canvas{margin: margin, rows: make([][]byte, Width/feetPerRow+1)}
	for i := range c.rows {
		c.rows[i] = make([]byte, Length+1+2*margin)
		for j := range c.rows[i] {
			c.rows[i][j] = ' '
		}
	}
	for _, l := range Lines() {
		c.line(l)
	}
	return c
}

// line draws a line, with a cross where it meets another.
func (c canvas) line(l Line) {
	mark := byte('-')
	switch {
	case l.Name == "net":
		mark = '#'
	case l.X1 == l.X2:
		mark = '|'
	}
	for y := l.Y1; y <= l.Y2; y += feetPerRow {
		for x := l.X1; x <= l.X2; x++ {
			at := &c.rows[y/feetPerRow][x+c.margin]
			if mark != '#' && *at != ' ' && *at != mark {
				*at = '+'
			} else {
				*at = mark
			}
		}
	}
}

// text writes words over the drawing, beginning at a column of the court.
func (c canvas) text(row, column int, words string) { copy(c.rows[row][column+c.margin:], words) }

// lines are the rows of the drawing without trailing blanks.
func (c canvas) lines() []string {
	out := make([]string, len(c.rows))
	for i, row := range c.rows {
		end := len(row)
		for end > 0 && row[end-1] == ' ' {
			end--
		}
		out[i] = string(row[:end])
	}
	return out
}
