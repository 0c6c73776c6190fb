package ui

import (
	"testing"

	"pgregory.net/rapid"
)

// TestTheCursorStaysInItsList while the list grows and shrinks under it.
func TestTheCursorStaysInItsList(t *testing.T) {
	keys := []string{"up", "down", "pgup", "pgdown", "home", "end", "x", "enter"}
	rapid.Check(t, func(r *rapid.T) {
		var c Cursor
		for range rapid.IntRange(1, 30).Draw(r, "presses") {
			n := rapid.IntRange(0, 40).Draw(r, "rows")
			before := c.In(n)
			key := rapid.SampledFrom(keys).Draw(r, "key")
			taken := c.Press(key, n)
			if at := c.In(n); at < 0 || at >= max(1, n) {
				r.Fatalf("the cursor is on row %d of %d", at, n)
			} else if !taken && at != before {
				r.Fatalf("%s is not about the cursor and moves it", key)
			}
			switch at := c.In(n); {
			case n == 0:
			case key == "home" && at != 0, key == "end" && at != n-1,
				key == "down" && at != min(n-1, before+1), key == "up" && at != max(0, before-1):
				r.Fatalf("%s leads from row %d of %d to %d", key, before, n, at)
			}
		}
	})
}
