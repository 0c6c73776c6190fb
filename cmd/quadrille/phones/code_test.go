package phones

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"rsc.io/qr"
)

// dark reads the squares of a drawn code back.
func dark(lines []string, ink Ink) (out [][]bool) {
	for _, line := range lines {
		runes := []rune(ansi.Strip(line))
		var upper, lower []bool
		for i := 0; i < len(runes); i++ {
			up, low := strings.ContainsRune("█▀#", runes[i]), strings.ContainsRune("█▄", runes[i])
			if ink.ASCII {
				i++
			}
			upper, lower = append(upper, up == ink.dark()), append(lower, low == ink.dark())
		}
		out = append(out, upper)
		if !ink.ASCII {
			out = append(out, lower)
		}
	}
	return out
}

// However a code is drawn, it is the one that the text has, dark on light, with a border of four squares.
func TestCodesAreDrawnAsTheyAre(t *testing.T) {
	const text = "http://192.168.100.200:8470/"
	want, err := qr.Encode(text, qr.L)
	if err != nil {
		t.Fatal(err)
	}
	for _, ink := range []Ink{{}, {Light: true}, {Colours: true}, {ASCII: true}, {ASCII: true, Light: true}} {
		lines, err := Code(text, ink)
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasPrefix(lines[0], "\x1b[38;5;16;48;5;231m") != ink.Colours {
			t.Errorf("%+v: %q", ink, lines[0])
		}
		got := dark(lines, ink)
		for y := range want.Size + 8 {
			for x := range want.Size + 8 {
				if got[y][x] != want.Black(x-4, y-4) {
					t.Fatalf("%+v: the square %d, %d is dark: %v", ink, x, y, got[y][x])
				}
			}
		}
		if !ink.ASCII && (len(lines) > 17 || ansi.StringWidth(lines[0]) > 40) {
			t.Errorf("%d lines of %d cells do not fit 80 by 24 with what stands around them", len(lines), ansi.StringWidth(lines[0]))
		}
	}
	large, err := Code(text, Ink{Scale: 3})
	if err != nil {
		t.Fatal(err)
	}
	for y, row := range dark(large, Ink{}) {
		for x, got := range row {
			if y < 3*(want.Size+8) && got != want.Black(x/3-4, y/3-4) {
				t.Fatalf("three times as large the square %d, %d is dark: %v", x, y, got)
			}
		}
	}
	if _, err := Code(strings.Repeat("x", 5000), Ink{}); err == nil {
		t.Error("a text that no code can hold is drawn")
	}
}
