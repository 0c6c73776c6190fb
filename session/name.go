package session

import (
	"strings"

	"club/quadrille/session/name"
)

// MaxName is the longest name the desk keeps, in terminal cells.
const MaxName = name.Max

// CleanName makes text from outside fit to be a name, or says why it cannot be one: see [name.Clean].
func CleanName(text string) (string, error) { return name.Clean(text) }

// CleanText makes any line of text fit for a screen, cut to width cells: see [name.Text].
func CleanText(text string, width int) string { return name.Text(text, width) }

// sameName compares names as people do: without case.
func sameName(a, b string) bool { return strings.EqualFold(a, b) }

// foldName is the form in which two spellings of a name are equal.
func foldName(text string) string { return name.Fold(text) }

// keyOf is the same for two spellings of which sameName is true.
func keyOf(text string) string { return name.Key(text) }
