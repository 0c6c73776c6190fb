package main

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// wrap breaks a sentence into lines that fit, all but the first indented.
func wrap(text string, indent int) string {
	return strings.TrimLeft(flow(strings.Fields(text), indent, 1), " ")
}

// fit cuts text to a width in cells and fills it up with blanks.
func fit(text string, width int) string {
	text = ansi.Truncate(text, width, "…")
	return text + strings.Repeat(" ", max(0, width-ansi.StringWidth(text)))
}

// flow puts pieces one after the other, gap blanks apart, on as few lines as hold them, each line
// indented.
func flow(pieces []string, indent, gap int) string {
	var out strings.Builder
	at := 0
	for i, piece := range pieces {
		w := ansi.StringWidth(piece)
		switch {
		case i == 0:
			at = indent
			out.WriteString(strings.Repeat(" ", indent))
		case at+gap+w > columns:
			at = indent
			out.WriteString("\n" + strings.Repeat(" ", indent))
		default:
			at += gap
			out.WriteString(strings.Repeat(" ", gap))
		}
		out.WriteString(piece)
		at += w
	}
	return out.String()
}

// width is the cells that text takes on a screen.
func width(text string) int { return ansi.StringWidth(text) }

// cut shortens text to a width in cells.
func cut(text string, width int) string { return ansi.Truncate(text, width, "…") }
