// Package widget has the drawings that several screens share: digits that can be read from afar, bars
// for what is compared, and the court as it is seen from above. They turn values into lines and know
// nothing of the night.
package widget

import "strings"

// DigitRows is how many lines the digits take.
const DigitRows = 3

// digits are three cells wide, drawn with half blocks, so that three lines show six rows.
var digits = map[rune][DigitRows]string{
	'0': {"█▀█", "█ █", "▀▀▀"},
	'1': {"▄█ ", " █ ", "▀▀▀"},
	'2': {"▀▀█", "█▀▀", "▀▀▀"},
	'3': {"▀▀█", "▀▀█", "▀▀▀"},
	'4': {"█ █", "▀▀█", "  ▀"},
	'5': {"█▀▀", "▀▀█", "▀▀▀"},
	'6': {"█▀▀", "█▀█", "▀▀▀"},
	'7': {"▀▀█", "  █", "  ▀"},
	'8': {"█▀█", "█▀█", "▀▀▀"},
	'9': {"█▀█", "▀▀█", "▀▀▀"},
	'-': {"   ", "▀▀▀", "   "},
	':': {"▄", "▄", " "},
	' ': {"   ", "   ", "   "},
}

// plainDigits are the same in ASCII, as segments.
var plainDigits = map[rune][DigitRows]string{
	'0': {" _ ", "| |", "|_|"},
	'1': {"   ", "  |", "  |"},
	'2': {" _ ", " _|", "|_ "},
	'3': {" _ ", " _|", " _|"},
	'4': {"   ", "|_|", "  |"},
	'5': {" _ ", "|_ ", " _|"},
	'6': {" _ ", "|_ ", "|_|"},
	'7': {" _ ", "  |", "  |"},
	'8': {" _ ", "|_|", "|_|"},
	'9': {" _ ", "|_|", " _|"},
	'-': {"   ", " _ ", "   "},
	':': {" ", ".", "."},
	' ': {"   ", "   ", "   "},
}

// Digits draws a number, a score or a time of day in three lines of the same width. What is neither a
// digit, "-" nor ":" is left out.
func Digits(text string, ascii bool) [DigitRows]string {
	font := digits
	if ascii {
		font = plainDigits
	}
	var out [DigitRows]string
	for _, r := range text {
		glyph, ok := font[r]
		if !ok {
			continue
		}
		for i := range out {
			if out[i] != "" {
				out[i] += " "
			}
			out[i] += glyph[i]
		}
	}
	return out
}

// BigRows is how many lines big digits take.
const BigRows = 5

// big are the digits, and the letters of what must be read across a hall, as five rows of three pixels, each pixel one bit, the leftmost the highest.
var big = map[rune][BigRows]uint8{
	'0': {7, 5, 5, 5, 7}, '1': {2, 6, 2, 2, 7}, '2': {7, 1, 7, 4, 7}, '3': {7, 1, 7, 1, 7}, '4': {5, 5, 7, 1, 1},
	'5': {7, 4, 7, 1, 7}, '6': {7, 4, 7, 5, 7}, '7': {7, 1, 2, 2, 2}, '8': {7, 5, 7, 5, 7}, '9': {7, 5, 7, 1, 7},
	'P': {7, 5, 7, 4, 4}, 'L': {4, 4, 4, 4, 7}, 'A': {7, 5, 7, 5, 5}, 'Y': {5, 5, 2, 2, 2}, 'H': {5, 5, 7, 5, 5}, 'E': {7, 4, 6, 4, 7},
	'D': {6, 5, 5, 5, 6}, '-': {0, 0, 7, 0, 0}, ':': {0, 2, 0, 2, 0}, ' ': {0, 0, 0, 0, 0},
}

// Big draws digits and the words PLAY HELD five lines high, two cells a pixel, for what must be read across a
// hall.
func Big(text string, ascii bool) [BigRows]string {
	pixel := "██"
	if ascii {
		pixel = "##"
	}
	var out [BigRows]string
	for _, r := range text {
		rows, ok := big[r]
		if !ok {
			continue
		}
		for i, bits := range rows {
			var b strings.Builder
			for bit := uint8(4); bit > 0; bit >>= 1 {
				if bits&bit != 0 {
					b.WriteString(pixel)
				} else {
					b.WriteString("  ")
				}
			}
			if out[i] != "" {
				out[i] += "  "
			}
			out[i] += b.String()
		}
	}
	return out
}

// Scaled draws rows of blocks so many times as large.
func Scaled(rows [BigRows]string, by int) []string {
	var out []string
	for _, row := range rows {
		var b strings.Builder
		for _, r := range row {
			for range by {
				b.WriteRune(r)
			}
		}
		for range by {
			out = append(out, b.String())
		}
	}
	return out
}
