// Package line fits text into the cells of a terminal. Widths are counted in cells, so names in
// any script and text with colours stay in their columns.
package line

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Cut shortens text to at most width cells and marks where it did.
func Cut(text string, width int) string {
	if width > 0 && len(text) <= width {
		return text
	}
	text, _ = cut(text, width)
	return text
}

// cut is Cut, with how many cells are left.
func cut(text string, width int) (string, int) {
	if width <= 0 {
		return "", 0
	}
	cells := Width(text)
	if cells <= width {
		return text, cells
	}
	mark := "…"
	if width == 1 {
		mark = ""
	}
	text = ansi.Truncate(text, width, mark)
	return text, Width(text)
}

// Fit makes text exactly width cells wide, cutting it or filling it with blanks on the right.
func Fit(text string, width int) string {
	text, cells := cut(text, width)
	return text + strings.Repeat(" ", max(0, width-cells))
}

// Right is Fit with the blanks on the left.
func Right(text string, width int) string {
	text, cells := cut(text, width)
	return strings.Repeat(" ", max(0, width-cells)) + text
}

// Spread puts one text at the left end of a line and one at its right end; the left one is cut
// when both do not fit.
func Spread(left, right string, width int) string {
	right = Cut(right, width)
	room := width - Width(right)
	if room <= 1 {
		return Fit(right, width)
	}
	return Fit(left, room-1) + " " + right
}

// Wrap breaks text at blanks into lines of at most width cells. A hyphen is no place to break: a score
// such as 11-7 stays in one piece.
func Wrap(text string, width int) []string {
	if width <= 0 {
		return nil
	}
	const joined = "\ue000" // of a range that no text here uses, and one cell wide like the hyphen
	text = ansi.Wrap(strings.ReplaceAll(text, "-", joined), width, "")
	return strings.Split(strings.ReplaceAll(text, joined, "-"), "\n")
}

// Beside joins two blocks of lines, the left one filled to width cells, with gap blanks between.
func Beside(left, right []string, width, gap int) []string {
	out := make([]string, max(len(left), len(right)))
	for i := range out {
		l, r := "", ""
		if i < len(left) {
			l = left[i]
		}
		if i < len(right) {
			r = right[i]
		}
		out[i] = Fit(l, width) + strings.Repeat(" ", gap) + r
	}
	return out
}

// Window cuts rows to height lines around the one that must stay visible, and gives the index of
// the first row shown.
func Window(rows, height, keep int) (from, until int) {
	if rows <= height {
		return 0, rows
	}
	from = min(max(0, keep-height/2), rows-height)
	return from, from + height
}
