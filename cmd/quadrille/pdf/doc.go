// Package pdf draws sheets as PDF: black on white, in a font that it brings along, on pages of a size.
package pdf
