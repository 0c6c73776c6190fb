package tui

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/palette"
	"club/quadrille/tui/ui"
)

// take opens the palette and takes the entry number at, as somebody would with arrows and enter.
func (s *stage) take(at int) *stage {
	s.press("ctrl+k")
	for range at {
		s.press("down")
	}
	return s.press("enter")
}

// TestEveryActionIsInThePalette, and does there what its key does: the screen and the log are the same after
// both.
func TestEveryActionIsInThePalette(t *testing.T) {
	for name, open := range moments {
		s := open(t)
		if s.m.dialog() != nil {
			continue // what a box has is asked for in the box
		}
		t.Run(name, func(t *testing.T) {
			c := s.m.context()
			entries := s.m.entries(c)
			at, mine := 0, actionEntries(s.m.screenActions(c))
			for _, a := range append(s.m.screenActions(c), s.m.deskActions(c)...) {
				if a.Key.Help().Desc == allCommands {
					continue
				}
				for _, w := range a.Named() {
					if at >= len(entries) || entries[at].Label != w.Label {
						t.Fatalf("%q has no entry of its own", w.Label)
					}
					here := at < len(mine) || name == "courts" || name == "door" // the desk's are the same everywhere
					if here {
						sameByName(t, open, a, w, at)
					}
					at++
				}
			}
		})
	}
}

// sameByName takes an action by one of its keys and by its entry.
func sameByName(t *testing.T, open func(*testing.T) *stage, a ui.Action, w ui.Way, at int) {
	t.Helper()
	byKey, byName := open(t).press(w.Key), open(t).take(at)
	key, name := byKey.trace(), byName.trace()
	if a.Why != "" { // the palette stays open, so that something else can be done
		key, name = byKey.refusal(), byName.refusal()
	}
	if key != name || byKey.quit != byName.quit {
		t.Errorf("%q does by its key %s\n%s\nand by its name\n%s", w.Label, w.Key, key, name)
	}
}

// TestThePaletteFindsWhatTheMenusHave, for any court, whatever screen one is on.
func TestThePaletteFindsWhatTheMenusHave(t *testing.T) {
	for _, at := range []string{"c", "d", "b", "r", "s", "h"} {
		s := called(t, 4, 18).press(at, "ctrl+k", "close court 3").shows("close court 3", "g 3 m c").press("enter")
		if s.night().Court("3").Open {
			t.Errorf("from %s, court 3 is still open", at)
		}
	}
	s := called(t, 4, 18).press(":", "walkover court 2", "enter")
	if got := s.final(2); !strings.Contains(got, "walkover") {
		t.Errorf("game 2 ends as %q", got)
	}
	called(t, 4, 18).press(":", "backup of the club file").shows("not now: nothing of this").press("enter").shows("! nothing of this is kept")
	called(t, 4, 18).press(":", "lightning").shows("! l").press("enter").shows("Told to stop").press("esc").shows("PLAY HELD")
	called(t, 4, 18).press("s", ":", "court 4").press("enter").shows("[Courts]", "▌ 4 ")
	called(t, 4, 18).press(":", "bram").shows("Bram Vale", "court 1 with").press("esc").shows("[Courts]")
	called(t, 4, 18).press(":", "zzzz", "enter").shows("! nothing here is called")
}

// TestThePaletteFindsPages of other screens, by other words too, and each once.
func TestThePaletteFindsPages(t *testing.T) {
	for words, want := range map[string]ui.ScreenID{"timeline": ui.TimelinePage, "summary": ui.SummaryPage, "aloud": ui.CallingPage, "by courts": ui.TimelinePage} {
		for _, at := range []string{"c", "b", "h"} {
			s := called(t, 2, 9).press(at, ":", words, "enter")
			if s.m.active != want {
				t.Errorf("%q from %s shows %d, want %d", words, at, s.m.active, want)
			}
		}
	}
	for _, at := range []string{"c", "d"} {
		s := called(t, 2, 9).press(at, "ctrl+k", "import").shows("open roster", "1 of 1").press("enter").shows("Open a roster", "File")
		s.press("x.csv", "esc", "ctrl+k", "import", "enter").hides("x.csv")
	}
	newStage(t).press(":", "import").shows("not now")
	reading(t).press("ctrl+k", "import").shows("not now")
}

// TestThePaletteLiesOverBoxes and gives them back, but what is taken there closes them.
func TestThePaletteLiesOverBoxes(t *testing.T) {
	s := called(t, 2, 9).press("o", "e", "ctrl+k").shows("─ Do ").press("esc").shows("Change tonight")
	s.press("ctrl+k", "bench").press("enter").shows("[Bench]").hides("Change tonight")
}

// TestThePaletteShowsEarlierNights with their standings.
func TestThePaletteShowsEarlierNights(t *testing.T) {
	s := called(t, 1, 4).press("117", "enter").do(session.EndNight{})
	s.press(":", "night of 20").shows("night of 20 November 2026", "Club night").press("enter").shows("reading only", "win share", "Agnes Vale")
}

// TestThePaletteKeepsUp with what happens behind it.
func TestThePaletteKeepsUp(t *testing.T) {
	s := called(t, 2, 9).press(":", "open court 2").shows("Nothing here has these letters")
	s.do(session.CloseCourt{Court: "2"}, session.FinishGame{Game: 2, Final: mustFinal(t, s.night().Settings)})
	s.hides("Nothing here has these letters")
}

// TestAPasteIntoTheCourtFinderStaysOnItsLine.
func TestAPasteIntoTheCourtFinderStaysOnItsLine(t *testing.T) {
	s := called(t, 2, 9).press("g").send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("x\ny"), Paste: true})
	s.shows("Go to court: xy_")
}

func TestHelpFilters(t *testing.T) {
	s := called(t, 2, 9).press("?").shows("Courts", "below", "/ filter")
	s.press("/", "undo").shows("Filter: undo", "bring back what the last undo took").hides("hold play")
	s.press("esc").shows("below").press("esc").hides("─ Keys ")
	s.press("?", "/", "xyzzy").shows("No key does that")
	for _, size := range sizes[1:] {
		s := called(t, 2, 9).resize(size[0], size[1]).press("?")
		if l := s.lines(); !strings.Contains(l[heading(t, l)], "Everywhere") {
			t.Errorf("at %v the desk's keys do not stand beside the screen's:\n%s", size, s.m.View())
		}
	}
	l := called(t, 2, 9).resize(80, 60).press("?").lines()
	if strings.Contains(l[heading(t, l)], "Everywhere") {
		t.Error("at 80 cells there are two columns")
	}
}

// heading is the line of the help page on which the keys of the courts begin.
func heading(t *testing.T, lines []string) int {
	t.Helper()
	for i, l := range lines {
		if strings.Contains(l, "│ Courts ") {
			return i
		}
	}
	t.Fatalf("no heading in %q", lines)
	return 0
}

// BenchmarkPaletteKey is one letter typed into the palette with 24 courts and 200 people.
func BenchmarkPaletteKey(b *testing.B) {
	s := newStage(b)
	s.do(session.OpenNight{Name: "Club night", Settings: session.DefaultSettings(7), Courts: 24})
	for i := range 200 {
		s.do(session.AddGuest{Name: fmt.Sprintf("%s %d", inventedName(i%50), i)})
	}
	s.m.active = ui.Courts
	s.resize(200, 60).press("n", ":")
	if _, ok := s.m.dialog().(*palette.Palette); !ok {
		b.Fatal("no palette is open")
	}
	for b.Loop() {
		s.press("c")
		_ = s.m.View()
		s.press("backspace")
		_ = s.m.View()
	}
}

// BenchmarkPaletteOpen is opening and closing it there.
func BenchmarkPaletteOpen(b *testing.B) {
	s := newStage(b)
	s.do(session.OpenNight{Name: "Club night", Settings: session.DefaultSettings(7), Courts: 24})
	for i := range 200 {
		s.do(session.AddGuest{Name: fmt.Sprintf("%s %d", inventedName(i%50), i)})
	}
	s.m.active = ui.Courts
	s.resize(200, 60).press("n")
	for b.Loop() {
		s.press(":")
		_ = s.m.View()
		s.press("esc")
	}
}

// mustFinal is a final score under the rules of a night.
func mustFinal(t *testing.T, s session.Settings) scoring.Final {
	t.Helper()
	final, err := s.Scoring.Final(11, 7, scoring.Played)
	if err != nil {
		t.Fatal(err)
	}
	return final
}

// TestThePaletteKeepsNothingTyped: what was typed into a box that it opened does not stand there the next time, and
// while an earlier night is read its people are found, and tonight's again after it.
func TestThePaletteKeepsNothingTyped(t *testing.T) {
	s := called(t, 2, 9)
	for range 2 {
		s.press(":", "change flow", "enter").shows("< rounds >")
		s.press("right").shows("< rolling >").press("esc", "esc")
	}
	s = reading(t).press("ctrl+k", "agnes").hides("court 1 with").press("esc", "esc", "ctrl+k", "agnes")
	if g := s.night().Playing(s.night().Roll[0].Person); g != nil {
		s.shows("court " + string(g.Court))
	}
}
