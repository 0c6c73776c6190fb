package pdf

import "rsc.io/qr"

// The side of a square of a code, in millimetres: a phone reads it from an arm's length. On a slip, which is held in
// the hand, it is smaller, so that a court's code fits the corner.
const (
	square     = 0.8
	slipSquare = 0.62
	slipFree   = 4 * slipSquare // around a code on a slip
)

// code is how a text is drawn as a code for cameras, and how wide and tall that is; nothing for no text. The empty
// border that a code needs (ISO/IEC 18004, 9.1) is the margin of the page and what is left free around it.
func (p *press) code(text string, square float64) (draw func(x, y float64), wide float64) {
	if text == "" {
		return nil, 0
	}
	code, err := qr.Encode(text, qr.M) // paper is bent, and stained
	if err != nil {
		return nil, 0 // no text of ours is as long as that
	}
	return func(x, y float64) {
		for row := range code.Size {
			for from := 0; from < code.Size; from++ {
				to := from
				for code.Black(to, row) { // squares side by side are one, so that no hair stands between them
					to++
				}
				if to > from {
					p.doc.Rect(x+square*float64(from), y+square*float64(row), square*float64(to-from), square, "F")
					from = to
				}
			}
		}
	}, square * float64(code.Size)
}
