package board

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/muesli/termenv"
	"pgregory.net/rapid"

	"club/quadrille/session/public"
	"club/quadrille/tui/line"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/widget"
)

// TestAnyBoardFits: whatever there is to see, on any terminal and at any time, the board fills it and is never
// larger.
func TestAnyBoardFits(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		v := hall(rapid.IntRange(0, 16).Draw(rt, "courts"), rapid.IntRange(0, 20).Draw(rt, "bench"))
		for i := range v.Courts {
			v.Courts[i].State = rapid.SampledFrom([]string{public.Closed, public.Free, public.Planned, public.Over, public.Called, public.Playing}).Draw(rt, "state")
			if rapid.Bool().Draw(rt, "empty") {
				v.Courts[i].A, v.Courts[i].B = nil, nil
			}
		}
		if rapid.Bool().Draw(rt, "message") {
			v.Messages = []public.Message{{Text: rapid.StringN(1, 60, 120).Draw(rt, "text")}}
		}
		if rapid.Bool().Draw(rt, "phones") {
			v.Phones = "http://192.168.178.120:8470/"
		}
		if rapid.IntRange(0, 4).Draw(rt, "held") == 0 {
			v.Hold = &public.Hold{Why: "heat"}
		}
		if rapid.IntRange(0, 3).Draw(rt, "rolling") == 0 {
			v.Round, v.Next.Round = 0, 0
		}
		b := &Board{
			view: v, theme: theme.Plain(), pen: newPen(false), away: rapid.Bool().Draw(rt, "away"),
			width: rapid.IntRange(1, 240).Draw(rt, "width"), height: rapid.IntRange(1, 70).Draw(rt, "height"),
			passed: time.Duration(rapid.IntRange(0, 600).Draw(rt, "passed")) * time.Second,
		}
		b.code = func(_ string, width, height int) []string {
			if width < 33 || height < 17 {
				return nil
			}
			return slices.Repeat([]string{strings.Repeat("█", 33)}, 17)
		}
		if rapid.Bool().Draw(rt, "ascii") {
			b.theme, b.pen = theme.Of(theme.Choice{Profile: termenv.Ascii, ASCII: true}), newPen(true)
		}
		lines := b.Lines()
		if len(lines) != b.height {
			rt.Fatalf("%d lines on a terminal of %d", len(lines), b.height)
		}
		for _, l := range lines {
			if line.Width(l) > b.width {
				rt.Fatalf("a line of %d cells on a terminal of %d: %s", line.Width(l), b.width, l)
			}
		}
	})
}

// TestEverybodyIsShownInTurn: within one go through all pages each player of each court stands on the board once
// at least, whatever the size, and everybody can tell on which court.
func TestEverybodyIsShownInTurn(t *testing.T) {
	for _, size := range sizes {
		for _, courts := range []int{1, 2, 5, 8, 16} {
			v := hall(courts, 0)
			b := &Board{view: v, theme: theme.Plain(), pen: newPen(false), width: size[0], height: size[1]}
			all := b.turnsOf("", v.Courts, b.width, b.height-3)
			g := b.pen.arrange(v.Courts, b.width, b.height-3, b.height)
			if len(all) != g.pages || g.pages*g.fromEach < courts || g.columns*g.rows < g.fromEach {
				t.Fatalf("%d courts at %v: %+v in %d turns", courts, size, g, len(all))
			}
			var shown []string
			for page := range g.pages {
				from := min(page*g.fromEach, courts)
				lines := b.courts(v.Courts, g, page)
				if used := len(lines); used > b.height-3 {
					t.Errorf("%d courts at %v take %d lines", courts, size, used)
				}
				text := strings.Join(lines, "\n")
				for _, c := range v.Courts[from:min(from+g.fromEach, courts)] {
					for _, name := range slices.Concat(c.A, c.B) {
						if !b.stands(text, name, g) {
							t.Errorf("%d courts at %v: %s is not on page %d:\n%s", courts, size, name, page+1, text)
						}
						shown = append(shown, name)
					}
				}
			}
			if len(shown) != 4*courts {
				t.Errorf("%d courts at %v show %d names", courts, size, len(shown))
			}
		}
	}
}

// stands tells whether a name stands on a page, in letters of some size or in ordinary type.
func (b *Board) stands(page, name string, g grid) bool {
	for _, text := range []string{name, spaced(name), line.Cut(spaced(name), 20), line.Cut(name, 12)} {
		if strings.Contains(page, strings.TrimSuffix(text, "…")) {
			return true
		}
	}
	for _, s := range widget.Sizes {
		if lines, ok := widget.Letters(bare(name), s, false); ok && strings.Contains(page, strings.TrimRight(lines[0], " ")) {
			return true
		}
	}
	return false
}

// TestLettersAreAsLargeAsTheyCanBe: on a large screen, and for few courts, names stand in letters of five lines;
// where letters that can be read across the hall have no room for all courts, these take turns.
func TestLettersAreAsLargeAsTheyCanBe(t *testing.T) {
	for _, c := range []struct {
		courts, width, height int
		rows, pages           int
	}{
		{1, 80, 24, 5, 1},
		{2, 80, 24, 3, 1},
		{4, 80, 24, 3, 2},
		{4, 213, 60, 5, 1},
		{16, 213, 60, 5, 2},
	} {
		t.Run(fmt.Sprintf("%d courts at %dx%d", c.courts, c.width, c.height), func(t *testing.T) {
			g := newPen(false).arrange(hall(c.courts, 0).Courts, c.width, c.height-3, c.height)
			if g.card.size.Rows() < c.rows || g.pages > c.pages {
				t.Errorf("names have %d lines on %d pages, want %d on at most %d", g.card.size.Rows(), g.pages, c.rows, c.pages)
			}
		})
	}
}
