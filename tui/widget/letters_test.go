package widget

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"club/quadrille/tui/line"
)

// TestLetters draws each of three sizes as it must look, from whole cells to quarters.
func TestLetters(t *testing.T) {
	for _, c := range []struct {
		text string
		size Size
		want string
	}{
		{"Hé", Size{4, 2}, "██  ██  ██████\n██  ██  ██    \n██████  ████  \n██  ██  ██    \n██  ██  ██████"},
		{"11", Size{2, 1}, "▄█  ▄█ \n █   █ \n▀▀▀ ▀▀▀"},
		{"li", Size{1, 1}, "▌ ▜▘\n▌ ▐ \n▀▘▀▘"},
	} {
		lines, ok := Letters(c.text, c.size, false)
		if got := strings.Join(lines, "\n"); !ok || got != c.want {
			t.Errorf("%s in %v is %v\n%s\nwant\n%s", c.text, c.size, ok, got, c.want)
		}
	}
}

// TestEveryLetterIsItself: no two letters look the same, each has five rows of one width, and every size is as
// wide and high as it says.
func TestEveryLetterIsItself(t *testing.T) {
	seen := map[string]rune{}
	for r, g := range letters {
		rows := strings.Fields(g)
		for _, row := range rows {
			if len(row) != len(rows[0]) || len(rows) != letterDots {
				t.Errorf("%q is no block of %d rows: %s", r, letterDots, g)
			}
		}
		if other, ok := seen[g]; ok {
			t.Errorf("%q and %q look the same", r, other)
		}
		seen[g] = r
	}
	for i, s := range Sizes {
		if i > 0 && s.Rows() > Sizes[i-1].Rows() {
			t.Errorf("%v is larger than the size before it", s)
		}
	}
}

// TestLettersOfAnyText: what can be drawn is drawn in lines of the width that was promised, in ASCII with nothing
// beyond it; and what cannot be is refused.
func TestLettersOfAnyText(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		text := rapid.OneOf(rapid.StringMatching(`[A-Za-zÀ-ÿŁłŒœ0-9 .,:'&()!?-]{0,20}`), rapid.String()).Draw(rt, "text")
		s := rapid.SampledFrom(Sizes).Draw(rt, "size")
		ascii := rapid.Bool().Draw(rt, "ascii")
		width, can := LettersWidth(text, s)
		lines, ok := Letters(text, s, ascii)
		if want := can && (!ascii || s.plain()); ok != want {
			rt.Fatalf("%q in %v: drawn %v, want %v", text, s, ok, want)
		}
		if ok && len(lines) != s.Rows() {
			rt.Fatalf("%d lines instead of %d", len(lines), s.Rows())
		}
		for _, l := range lines {
			if line.Width(l) != width {
				rt.Fatalf("a line of %d cells instead of %d: %q", line.Width(l), width, l)
			}
			if ascii && strings.ContainsFunc(l, func(r rune) bool { return r >= utf8.RuneSelf }) {
				rt.Fatalf("%q is not ASCII", l)
			}
		}
	})
	for _, text := range []string{"Zoë Øster", "Łukasz Ågren", "Straße 3", "Bo O’Neil", "Ann-Marie (2)"} {
		if _, ok := LettersWidth(text, Size{1, 1}); !ok {
			t.Errorf("%q cannot be drawn", text)
		}
	}
	for _, text := range []string{"", "李雷", "Ann 👩"} {
		if _, ok := LettersWidth(text, Size{1, 1}); ok {
			t.Errorf("%q can be drawn", text)
		}
	}
}
