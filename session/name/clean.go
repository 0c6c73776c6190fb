// Package name makes text from outside fit to be the name of a person on a screen, and tells which
// names are nearly the same.
package name

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"
	"golang.org/x/text/unicode/norm"
)

// Max is the widest name that is kept, in terminal cells.
const Max = 80

// MaxMarks is how many accents and other marks one letter may carry. No script in use needs more than half of
// them.
const MaxMarks = 8

// Clean makes a name fit for a screen, as [Text] does, and refuses what cannot be one: a name that nobody can
// see, that is wider than Max, or whose letters are buried under marks.
func Clean(text string) (string, error) {
	name, buried := tidy(text)
	switch width := ansi.StringWidth(name); {
	case width == 0:
		return "", fmt.Errorf("a name needs at least one letter that can be seen")
	case buried:
		return "", fmt.Errorf("the name %q has a letter under more than %d marks: write it without them", ansi.Truncate(name, 20, "…"), MaxMarks)
	case width > Max:
		return "", fmt.Errorf("a name may be %d cells wide, and this one is %d: shorten %q", Max, width, ansi.Truncate(name, 20, "…"))
	}
	return name, nil
}

// Text makes a line of text fit for a screen: control characters, escape sequences and invisible marks go,
// white space becomes single blanks, composed characters their shortest form (NFC), and what exceeds width
// cells is cut between two characters as people see them. Joined emoji stay joined. It is empty if nothing
// is left.
func Text(text string, width int) string {
	text, _ = tidy(text)
	if len(text) <= width {
		return text
	}
	return strings.TrimRightFunc(ansi.Truncate(text, width, ""), func(r rune) bool { return r == ' ' || isJoiner(r) })
}

// tidy is Text without the cut. Buried tells that marks beyond MaxMarks on one letter were dropped.
func tidy(text string) (kept string, buried bool) {
	in := []rune(ansi.Strip(strings.ToValidUTF8(text, "")))
	out := make([]rune, 0, len(in))
	marks := 0
	for i, r := range in {
		last := ' '
		if len(out) > 0 {
			last = out[len(out)-1]
		}
		switch {
		case unicode.IsSpace(r) || isBlank(r):
			marks = 0
			if last != ' ' {
				out = append(out, ' ')
			}
		case isJoiner(r):
			if i+1 < len(in) && joins(last, in[i+1]) {
				out = append(out, r)
			}
		case r == emojiStyle:
			if unicode.Is(unicode.So, last) {
				out = append(out, r)
			}
		case isInvisible(r):
		case unicode.Is(unicode.M, r):
			if marks += marksOf(r); marks > MaxMarks {
				buried = true
			} else if last != ' ' {
				out = append(out, r)
			}
		default:
			marks = marksOf(r)
			out = append(out, r)
		}
	}
	// At last, since what went may have stood between a letter and its accent.
	return norm.NFC.String(strings.TrimRight(string(joinersBetween(out)), " ")), buried
}

// marksOf counts the marks of a character when it is taken apart (NFD), since one character may stand for a
// letter and its marks, or for two marks, and come back from NFC in either form.
func marksOf(r rune) int {
	n := 0
	for _, part := range norm.NFD.String(string(r)) {
		if unicode.Is(unicode.M, part) {
			n++
		}
	}
	return n
}

// joinersBetween drops the joiners that join nothing any more, since what they joined went.
func joinersBetween(text []rune) []rune {
	out := text[:0]
	for i, r := range text {
		if isJoiner(r) && (len(out) == 0 || i+1 == len(text) || !joins(out[len(out)-1], text[i+1])) {
			continue
		}
		out = append(out, r)
	}
	return out
}

// The characters that join others, and the one that asks for the picture of a character.
const (
	zeroWidthNonJoiner = '\u200c'
	zeroWidthJoiner    = '\u200d'
	emojiStyle         = '\ufe0f'
)

func isJoiner(r rune) bool { return r == zeroWidthJoiner || r == zeroWidthNonJoiner }

// isInvisible tells of characters that cannot be seen and mean nothing in a name.
func isInvisible(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Co, unicode.Cs, unicode.Variation_Selector)
}

// isBlank tells of letters and symbols that look like a blank (Unicode 15, Default_Ignorable_Code_Point and
// the empty Braille pattern).
func isBlank(r rune) bool {
	switch r {
	case '\u115f', '\u1160', '\u3164', '\uffa0', '\u2800', '\u17b4', '\u17b5', '\u034f':
		return true
	}
	return false
}

// joined are the scripts in which a joiner between two letters changes how they are written (Unicode core
// specification, 9.2 and 12.1).
var joined = []*unicode.RangeTable{
	unicode.Arabic, unicode.Syriac, unicode.Devanagari, unicode.Bengali, unicode.Gurmukhi, unicode.Gujarati,
	unicode.Oriya, unicode.Tamil, unicode.Telugu, unicode.Kannada, unicode.Malayalam, unicode.Sinhala,
}

// joins tells whether a joiner between two characters has a meaning: between pictures, and between letters of
// scripts that are joined.
func joins(before, after rune) bool {
	picture := func(r rune) bool { return unicode.Is(unicode.So, r) }
	if picture(after) && (picture(before) || before == emojiStyle || before >= 0x1f3fb && before <= 0x1f3ff) {
		return true
	}
	return unicode.In(before, joined...) && unicode.In(after, joined...)
}
