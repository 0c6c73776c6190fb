package phones

import (
	"fmt"
	"strings"

	"rsc.io/qr"
)

// Ink is how a code is drawn on a terminal. Cameras want dark on light, so the colours are given where there are
// any; without, what is drawn is what is light, or what is dark on a light background.
type Ink struct {
	Colours bool // black on white, whatever the terminal's own are
	Light   bool // the background of the terminal, where there are no colours
	ASCII   bool // plain characters, two for each square
	Scale   int  // how many times as large each way, 0 for once
}

// quiet is the empty border that a code needs, in squares (ISO/IEC 18004, section 9.1).
const quiet = 4

// Code draws a text as a QR code, in half blocks as a rule: two rows of squares in one line.
func Code(text string, ink Ink) ([]string, error) {
	code, err := qr.Encode(text, qr.L) // a screen is not torn or stained, and a small code fits it
	if err != nil {
		return nil, fmt.Errorf("no code can be made of %s: %w", text, err)
	}
	scale := max(1, ink.Scale)
	black := func(x, y int) bool { return code.Black(x/scale-quiet, y/scale-quiet) }
	var lines []string
	step := 2
	if ink.ASCII {
		step = 1
	}
	size := (code.Size + 2*quiet) * scale
	for y := 0; y < size; y += step {
		var line strings.Builder
		for x := range size {
			line.WriteString(ink.square(black(x, y), black(x, y+1)))
		}
		lines = append(lines, ink.line(line.String()))
	}
	return lines, nil
}

// square draws two squares, one above the other; in ASCII the upper one.
func (i Ink) square(upper, lower bool) string {
	if !i.dark() {
		upper, lower = !upper, !lower
	}
	switch {
	case i.ASCII && upper:
		return "##"
	case i.ASCII:
		return "  "
	case upper && lower:
		return "█"
	case upper:
		return "▀"
	case lower:
		return "▄"
	}
	return " "
}

// dark tells whether it is the dark squares that are drawn.
func (i Ink) dark() bool { return i.Colours || i.Light }

func (i Ink) line(text string) string {
	if !i.Colours {
		return text
	}
	return "\x1b[38;5;16;48;5;231m" + text + "\x1b[0m"
}
