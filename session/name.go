package session

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"
	"golang.org/x/text/unicode/norm"
)

// MaxName is the longest name the desk keeps, in terminal cells.
const MaxName = 40

// CleanName makes text from outside fit to be a name on a screen: control characters, escape
// sequences and invisible direction marks go, white space becomes single blanks, composed
// characters their shortest form (NFC), and what exceeds MaxName cells is cut. An empty result is
// an error.
func CleanName(text string) (string, error) {
	name := CleanText(text, MaxName)
	if name == "" {
		return "", fmt.Errorf("a name needs at least one letter")
	}
	return name, nil
}

// CleanText is CleanName for any line of text, cut to width cells, empty if nothing is left.
func CleanText(text string, width int) string {
	text = ansi.Strip(strings.ToValidUTF8(text, ""))
	text = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.In(r, unicode.Cf, unicode.Co, unicode.Cs), unicode.Is(unicode.Variation_Selector, r):
			return -1
		}
		return r
	}, text)
	text = norm.NFC.String(text) // at last, since what went may have stood between a letter and its accent
	return strings.TrimSpace(ansi.Truncate(strings.Join(strings.Fields(text), " "), width, ""))
}

// sameName compares names as people do: without case.
func sameName(a, b string) bool { return strings.EqualFold(a, b) }

// foldName is the form in which two spellings of a name are equal.
func foldName(name string) string { return strings.ToLower(strings.TrimSpace(name)) }
