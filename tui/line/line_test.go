package line

import (
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

func TestFitting(t *testing.T) {
	for _, c := range []struct{ name, got, want string }{
		{"cut to nothing", Cut("abc", 0), ""},
		{"cut below nothing", Cut("abc", -1), ""},
		{"cut to one cell", Cut("abc", 1), "a"},
		{"cut with a mark", Cut("abcdef", 4), "abc…"},
		{"not cut", Cut("abcd", 4), "abcd"},
		{"wide letters", Cut("李小龍", 5), "李小…"},
		{"half a wide letter", Cut("李小龍", 4), "李…"},
		{"joined emoji stay whole", Cut("👩\u200d👩\u200d👧 Noll", 4), "👩\u200d👩\u200d👧 …"},
		{"half a joined emoji", Cut("👩\u200d👩\u200d👧", 1), ""},
		{"a letter keeps its marks", Cut("e\u0301\u0302fg", 2), "e\u0301\u0302…"},
		{"colour does not count", Cut("\x1b[31mabc\x1b[0m", 3), "\x1b[31mabc\x1b[0m"},
		{"fit short", Fit("ab", 4), "ab  "},
		{"fit long", Fit("abcdef", 4), "abc…"},
		{"fit wide", Fit("李", 3), "李 "},
		{"right short", Right("ab", 4), "  ab"},
		{"right long", Right("abcdef", 4), "abc…"},
		{"spread", Spread("ab", "cd", 8), "ab    cd"},
		{"spread with little room", Spread("abcdef", "xy", 7), "abc… xy"},
		{"spread without room", Spread("abcdef", "uvwxyz", 7), "uvwxyz "},
		{"spread with too little", Spread("abcdef", "uvwxyz", 4), "uvw…"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
}

// anyText draws text as it may come from a roster: any letters, wide and combining ones, colours.
func anyText() *rapid.Generator[string] {
	part := rapid.OneOf(
		rapid.StringMatching(`[a-z ]{0,8}`),
		rapid.SampledFrom([]string{"李小龍", "é", "e\u0301", "Ōno", "👩‍👧", "\x1b[1m", "\x1b[0m", " ", "…"}),
	)
	return rapid.Custom(func(r *rapid.T) string {
		return strings.Join(rapid.SliceOfN(part, 0, 8).Draw(r, "parts"), "")
	})
}

// TestWidthIsThatOfTheTerminal: what is counted in the short way is counted as ansi.StringWidth does, which knows the
// rules of Unicode: each letter alone, before and after others, and any text.
func TestWidthIsThatOfTheTerminal(t *testing.T) {
	check := func(text string) {
		if got, want := Width(text), ansi.StringWidth(text); got != want {
			t.Errorf("%q is %d cells wide, want %d", text, got, want)
		}
	}
	for r := rune(1); r < 0x3000; r++ {
		check(string(r))
		for _, other := range []string{"a", "e\u0301", "\u0301", "\u200d", "\ufe0f", "\u20e3", "👩", "李", "ש", "─", "\x1b[1m", "🇳🇱"} {
			check(string(r) + other)
			check(other + string(r))
		}
	}
	for _, text := range []string{"", "\x1b", "\x1b[", "\x1b[1", "\x1b[1;31mred\x1b[0m", "\x1b[2Kx", "\x1b]0;title\x07x", "\xff\xfe", "a\xc3"} {
		check(text)
	}
	rapid.Check(t, func(r *rapid.T) {
		text := rapid.OneOf(anyText(), rapid.String()).Draw(r, "text")
		if got, want := Width(text), ansi.StringWidth(text); got != want {
			r.Fatalf("%q is %d cells wide, want %d", text, got, want)
		}
	})
}

func TestWidthsHold(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text, other := anyText().Draw(r, "text"), anyText().Draw(r, "other")
		width := rapid.IntRange(0, 40).Draw(r, "width")
		if got := Width(Cut(text, width)); got > width {
			r.Fatalf("cut to %d is %d wide", width, got)
		}
		if Width(text) <= width && Cut(text, width) != text && width > 0 {
			r.Fatalf("%q fits %d and was cut", text, width)
		}
		for name, got := range map[string]string{"Fit": Fit(text, width), "Right": Right(text, width), "Spread": Spread(text, other, width)} {
			if Width(got) != width {
				r.Fatalf("%s to %d gives %d cells: %q", name, width, Width(got), got)
			}
		}
	})
}

// TestWrappingLosesNoWord: all lines fit, and read one after the other they are the text.
func TestWrappingLosesNoWord(t *testing.T) {
	word := rapid.StringMatching(`[a-zé李-]{1,9}`)
	rapid.Check(t, func(r *rapid.T) {
		words := rapid.SliceOfN(word, 0, 20).Draw(r, "words")
		width := rapid.IntRange(2, 50).Draw(r, "width") // a wide letter takes two cells
		lines := Wrap(strings.Join(words, " "), width)
		for _, l := range lines {
			if Width(l) > width {
				r.Fatalf("%q is wider than %d", l, width)
			}
		}
		if got, want := strings.ReplaceAll(strings.Join(lines, ""), " ", ""), strings.Join(words, ""); got != want {
			r.Fatalf("wrapped to %d, %q reads %q", width, want, got)
		}
	})
	for _, c := range []struct {
		text  string
		width int
		want  []string
	}{
		{"abc", 0, nil},
		{"won 11-7 today", 8, []string{"won 11-7", "today"}},
		{"won 11-7 today", 6, []string{"won", "11-7", "today"}},
		{"11-7", 3, []string{"11-", "7"}}, // longer than a line
		{"", 5, []string{""}},
	} {
		if got := Wrap(c.text, c.width); !slices.Equal(got, c.want) {
			t.Errorf("%q in %d cells is %q, want %q", c.text, c.width, got, c.want)
		}
	}
}

// TestTheWindowShowsWhatMustBeSeen: it has the height, lies within the rows and holds the row that
// must stay visible.
func TestTheWindowShowsWhatMustBeSeen(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		rows := rapid.IntRange(0, 100).Draw(r, "rows")
		height := rapid.IntRange(1, 40).Draw(r, "height")
		keep := rapid.IntRange(0, max(0, rows-1)).Draw(r, "keep")
		from, until := Window(rows, height, keep)
		switch {
		case from < 0, until > rows, until-from != min(rows, height):
			r.Fatalf("rows %d to %d of %d in %d lines", from, until, rows, height)
		case rows > 0 && (keep < from || keep >= until):
			r.Fatalf("row %d is not among %d to %d", keep, from, until)
		}
	})
}

func TestBeside(t *testing.T) {
	got := Beside([]string{"a", "long one"}, []string{"x", "y", "z"}, 4, 2)
	if want := []string{"a     x", "lon…  y", "      z"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := Beside(nil, nil, 4, 2); len(got) != 0 {
		t.Errorf("nothing beside nothing is %q", got)
	}
	if got := Beside([]string{"\x1b[1mab\x1b[0m"}, []string{"c"}, 3, 1); ansi.Strip(got[0]) != "ab  c" {
		t.Errorf("colour moves the column: %q", got)
	}
}

func TestPercentNeverRoundsToAllOrNothing(t *testing.T) {
	for share, want := range map[float64]string{
		0: "0 %", 1e-6: "<1 %", 0.004: "<1 %", 0.0051: "1 %", 1.0 / 3: "33 %", 2.0 / 3: "67 %", 0.29: "29 %",
		0.994: "99 %", 0.996: ">99 %", 299.0 / 300: ">99 %", 1: "100 %",
	} {
		if got := Percent(share); got != want {
			t.Errorf("%v is %q, want %q", share, got, want)
		}
	}
	if got := Range(0.438, 1); got != "44 to 100 %" {
		t.Errorf("%q", got)
	}
}

// TestBothAreThere: two texts take no more than the room, neither vanishes while there are three cells for each, and what
// fits is not cut.
func TestBothAreThere(t *testing.T) {
	for _, c := range []struct {
		a, b string
		room int
		want string
	}{
		{"Agnes", "Bo", 8, "Agnes&Bo"},
		{"Agnes", "Bo", 7, "Agn…&Bo"},
		{"Bo", "Agnes", 7, "Bo&Agn…"},
		{"Agnes", "Bertil", 9, "Agn…&Ber…"},
		{"李雷李雷", "Agnes", 9, "李…&Agn…"},
	} {
		if got := Both(c.a, "&", c.b, c.room); got != c.want {
			t.Errorf("%s and %s in %d cells are %q, want %q", c.a, c.b, c.room, got, c.want)
		}
	}
	rapid.Check(t, func(r *rapid.T) {
		a, b, room := rapid.StringMatching(`[a-z李é]{1,12}`).Draw(r, "a"), rapid.StringMatching(`[a-z李é]{1,12}`).Draw(r, "b"), rapid.IntRange(7, 40).Draw(r, "room")
		got := Both(a, "&", b, room)
		left, right, _ := strings.Cut(got, "&")
		if Width(got) > room || left == "" || right == "" || Width(a+"&"+b) <= room && got != a+"&"+b {
			r.Fatalf("%s and %s in %d cells are %q", a, b, room, got)
		}
	})
}
