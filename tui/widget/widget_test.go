package widget

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"club/quadrille/tui/line"
)

// TestDigitsAreOfOneWidth: all lines of a number are equally wide, in both fonts, and numbers differ.
func TestDigitsAreOfOneWidth(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		seen := map[string]string{}
		for _, text := range []string{"0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11-7", "12:45", "7x"} {
			rows := Digits(text, ascii)
			bigRows := Big(text, ascii)
			for _, all := range [][]string{rows[:], bigRows[:]} {
				for _, r := range all {
					if line.Width(r) != line.Width(all[0]) {
						t.Errorf("%q has lines of %d and %d cells", text, line.Width(all[0]), line.Width(r))
					}
					if ascii && strings.ContainsFunc(r, func(c rune) bool { return c >= utf8.RuneSelf }) {
						t.Errorf("%q is not ASCII: %q", text, r)
					}
				}
				key := strings.Join(all, "\n")
				if other, ok := seen[key]; ok && strings.TrimSuffix(text, "x") != other {
					t.Errorf("%s and %s look the same", text, other)
				}
				seen[key] = strings.TrimSuffix(text, "x")
			}
		}
	}
}

func TestProgress(t *testing.T) {
	for _, c := range []struct {
		passed, expected float64
		want             string
	}{
		{0, 10, "╌╌╌╌╌╌╌╌"},
		{0.1, 10, "━╌╌╌╌╌╌╌"},
		{5, 10, "━━━━╌╌╌╌"},
		{9.9, 10, "━━━━━━━╌"},
		{10, 10, "━━━━━━━━"},
		{30, 10, "━━━━━━━━"},
		{5, 0, "╌╌╌╌╌╌╌╌"},
	} {
		if got := Progress(8, c.passed, c.expected); got != c.want {
			t.Errorf("%g of %g is %s, want %s", c.passed, c.expected, got, c.want)
		}
	}
}

func TestGauge(t *testing.T) {
	for _, c := range []struct {
		value, bound, most float64
		want               string
	}{
		{60, 50, 100, "▰▰▰▰▰┃▱▱▱▱"},
		{50, 50, 100, "▰▰▰▰▰┃▱▱▱▱"},
		{0, 0, 100, "▱▱▱▱▱▱▱▱▱▱"},
		{100, 0, 100, "▰▰▰▰▰▰▰▰▰▰"},
		{1, 1, 0, ""},
	} {
		if got := Gauge(10, c.value, c.bound, c.most); got != c.want {
			t.Errorf("%g with bound %g of %g is %q, want %q", c.value, c.bound, c.most, got, c.want)
		}
	}
}

func TestRun(t *testing.T) {
	for _, c := range []struct {
		width  int
		values []float64
		want   string
	}{
		{8, []float64{0, 1, 2, 3, 4, 5, 6, 7}, "▁▂▃▄▅▆▇█"},
		{2, []float64{9, 0, 5}, "▁█"},
		{5, []float64{4, 4}, "▅▅"},
		{5, nil, ""},
	} {
		if got := Run(c.width, c.values); got != c.want {
			t.Errorf("%v in %d cells is %q, want %q", c.values, c.width, got, c.want)
		}
	}
}

// TestCourtIsToScale: the non-volley zones are 7 ft of 44, the service boxes 15, the net is in the middle.
func TestCourtIsToScale(t *testing.T) {
	got := Court{
		Left:  [2]Spot{{Name: "Bram"}, {Name: "Agnes", Serves: true}},
		Right: [2]Spot{{Name: "Cleo", Receives: true}, {Name: "Dario"}},
	}.Lines(33, 7)
	want := []string{
		"┌──────────┬────╥────┬──────────┐",
		"│ Bram     │    ║    │     Cleo○│",
		"│          │    ║    │          │",
		"├──────────┤    ║    ├──────────┤",
		"│          │    ║    │          │",
		"│●Agnes    │    ║    │    Dario │",
		"└──────────┴────╨────┴──────────┘",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("the court is\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// TestCourtAtAnySize: every line has the width that was asked for, both halves are within a cell of each
// other, and everybody is on it.
func TestCourtAtAnySize(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		width, height := rapid.IntRange(0, 120).Draw(rt, "width"), rapid.IntRange(0, 40).Draw(rt, "height")
		names := []string{"李雷", "Zoë", "Al", "👩‍👩‍👧"}
		lines := Court{Left: [2]Spot{{Name: names[0]}, {Name: names[1]}}, Right: [2]Spot{{Name: names[2]}, {Name: names[3]}}}.Lines(width, height)
		if width < LeastWidth || height < LeastHeight {
			if lines != nil {
				rt.Fatalf("%d by %d is drawn", width, height)
			}
			return
		}
		if len(lines) != height {
			rt.Fatalf("%d lines instead of %d", len(lines), height)
		}
		for _, l := range lines {
			if line.Width(l) != width {
				rt.Fatalf("a line of %d cells instead of %d: %s", line.Width(l), width, l)
			}
		}
		all := strings.Join(lines, "\n")
		for _, n := range names {
			if !strings.Contains(all, n) {
				rt.Fatalf("%s is not on the court of %d by %d:\n%s", n, width, height, all)
			}
		}
		left, right, _ := strings.Cut(lines[0], "╥")
		if d := line.Width(left) - line.Width(right); d < -1 || d > 1 {
			rt.Fatalf("the net is not in the middle: %s", lines[0])
		}
	})
}
