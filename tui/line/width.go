package line

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// Width is how many cells text takes. Most text of a frame is made of letters that take one cell each, and is counted
// as it is; whatever else there is in it, ansi.StringWidth counts by the rules of Unicode.
func Width(text string) int {
	cells := 0
	for i := 0; i < len(text); {
		switch b := text[i]; {
		case b >= ' ' && b < 0x7f:
			cells++
			i++
		case b == '\x1b':
			n := styled(text[i:])
			if n == 0 {
				return ansi.StringWidth(text)
			}
			i += n
		default:
			r, n := utf8.DecodeRuneInString(text[i:])
			if !single(r) {
				return ansi.StringWidth(text)
			}
			cells++
			i += n
		}
	}
	return cells
}

// styled is the length of the sequence at the beginning of text that sets a style, 0 where there is none.
func styled(text string) int {
	if !strings.HasPrefix(text, "\x1b[") {
		return 0
	}
	for i := 2; i < len(text); i++ {
		switch b := text[i]; {
		case b == 'm':
			return i + 1
		case (b < '0' || b > '9') && b != ';':
			return 0
		}
	}
	return 0
}

// single tells whether a letter takes one cell whatever stands beside it, among those that frames are made of: Latin
// letters, dashes, quotes, arrows, lines and blocks. A mark that joins a letter before it is not among them.
func single(r rune) bool {
	switch {
	case r >= 0xa1 && r < 0x300:
		return r != 0xad // the soft hyphen
	case r >= 0x2010 && r <= 0x2027, r >= 0x2030 && r <= 0x205e:
		return true
	case r >= 0x2190 && r <= 0x2193, r >= 0x2500 && r <= 0x25fc:
		return true
	}
	return false
}
