package tui

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"club/quadrille/session"
)

// fails is what testing.T and rapid.T have in common here.
type fails interface {
	Helper()
	Fatalf(format string, args ...any)
}

// checkFrame fails unless the desk draws a frame that fits its terminal, without control
// characters of its own.
func checkFrame(t fails, m *Model) {
	t.Helper()
	view := m.View()
	lines := strings.Split(view, "\n")
	if len(lines) > m.height && m.width > 0 {
		t.Fatalf("%d lines on a terminal of %d:\n%s", len(lines), m.height, view)
	}
	for _, l := range lines {
		if w := ansi.StringWidth(l); w > m.width {
			t.Fatalf("a line of %d cells on a terminal of %d: %q", w, m.width, l)
		}
		if strings.ContainsAny(l, "\t\r\x07\x08") {
			t.Fatalf("a control character in %q", l)
		}
	}
}

// checkReplay fails unless the desk shows exactly what a new desk would read from the log.
func checkReplay(t fails, s *stage) {
	t.Helper()
	again, err := session.Load(s.log.Records(1))
	if err != nil {
		t.Fatalf("the log cannot be read again: %v", err)
	}
	shown := s.m.ledger
	got, want := stateOf(t, shown.Club()), stateOf(t, again.Club())
	if got != want || !reflect.DeepEqual(again.Actions(), shown.Actions()) {
		t.Fatalf("the desk shows another state than its log gives\n got %s\nwant %s", got, want)
	}
	for i, n := range again.Club().Nights { // with the state of their rallies, which is not written
		if !reflect.DeepEqual(n.Games, shown.Club().Nights[i].Games) {
			t.Fatalf("the desk shows other games than its log gives\n got %+v\nwant %+v", shown.Club().Nights[i].Games, n.Games)
		}
	}
}

// stateOf is all that a club stands for; where its people are noted for finding them belongs to no state.
func stateOf(t fails, c *session.Club) string {
	t.Helper()
	text, err := json.Marshal(c)
	if err != nil {
		t.Fatalf("the state cannot be written: %v", err)
	}
	return string(text)
}

// strokes are keys that mean something somewhere, and some that do not.
var strokes = []string{
	"n", "n", "n", "d", "c", "b", "r", "s", "h", "f", "u", "U", "!", "o", "t", "?", "m", "x", "l", "e", "a", "i", "w", "y", "+", "/", "q",
	"v", "p", "g", "k", ":", "ctrl+k", "a", "ctrl+a", "ctrl+l", "z", "j", "=", "2", "3", "*", "F", "ctrl+r", "ctrl+w",
	"1", "7", "11", "117", "9", "119", "11 9", "0", " ", "-", "aab", "bbb", "agn", "Zoe Zimmer", "ünïcödé 字", "*2; ",
	"enter", "enter", "enter", "esc", "esc", "tab", "shift+tab", "up", "down", "left", "right", "home", "end", "pgup", "pgdown",
	"backspace", "delete", "ctrl+n", "ctrl+f", "ctrl+o", "ctrl+t", "ctrl+g", "ctrl+z", "ctrl+y", "ctrl+p", "ctrl+u", "f1",
}

// TestAnyKeysAndAnySizes: whatever is typed and clicked on terminals of any size, the desk draws
// what fits, and shows what its log holds.
func TestAnyKeysAndAnySizes(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := beginning(t, rapid.IntRange(0, 4).Draw(r, "beginning"))
		size := func(most int, name string) int {
			return rapid.OneOf(rapid.IntRange(1, most), rapid.SampledFrom([]int{24, 40, 80, 120})).Draw(r, name)
		}
		act := map[string]func(*rapid.T){
			"": func(r *rapid.T) { checkFrame(r, s.m) },
			"key": func(r *rapid.T) {
				s.press(rapid.SampledFrom(strokes).Draw(r, "key"))
				s.desk.Wait()
			},
			"again": func(r *rapid.T) { s.press(rapid.SampledFrom(strokes).Draw(r, "key"), "enter") },
			"paste": func(r *rapid.T) {
				s.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: rapid.SliceOfN(rapid.Rune(), 0, 9).Draw(r, "text"), Paste: true})
			},
			"resize": func(r *rapid.T) { s.resize(size(210, "width"), size(70, "height")) },
			"click":  func(r *rapid.T) { s.click(size(210, "x")-1, size(70, "y")-1) },
			"wait":   func(r *rapid.T) { s.pass(rapid.IntRange(0, 40).Draw(r, "minutes")).send(tickMsg{}) },
			"slow":   func(*rapid.T) { s.slow = true },
			"release": func(*rapid.T) {
				if len(s.held) > 0 {
					s.release()
				}
			},
			"quit": func(*rapid.T) {
				if s.quit {
					s.quit, s.slow, s.held = false, false, nil
					s.reopen()
				}
			},
		}
		r.Repeat(act)
		for len(s.held) > 0 && !s.quit {
			s.release()
		}
		checkFrame(r, s.m)
		checkReplay(r, s)
	})
}

// beginning is one of the states in which a test of anything starts.
func beginning(t testing.TB, i int) *stage {
	t.Helper()
	switch i {
	case 1:
		return newStage(t).roster(4, "roster18.csv")
	case 2:
		return called(t, 2, 9)
	case 3:
		rolling := func(set *session.Settings) { set.Flow = session.Rolling }
		return newStage(t).people(3, 14, rolling).press("n")
	case 4:
		return called(t, 1, 4).press("enter", "aab")
	}
	return newStage(t)
}

// FuzzKeys reads bytes as a terminal would send them: printable ones that follow each other come
// in one message, the low ones are control keys, the high ones stand for keys with long sequences,
// clicks and sizes.
func FuzzKeys(f *testing.F) {
	f.Add(byte(0), []byte("nClub night\r\x0f"))
	f.Add(byte(2), []byte("117\r9 6t\rm\x1bx1\rs"))
	f.Add(byte(4), []byte("aaab\x7f\x7fbb\x1bu!ly"))
	f.Add(byte(1), []byte("dagn\rjon\rlqui\r\x1b\x1bn117\t\r"))
	f.Add(byte(3), []byte("119\r\x80\x81\x82\x83b\rl\xf3\xa5h\r\x1b"))
	f.Fuzz(func(t *testing.T, start byte, typed []byte) {
		if len(typed) > 200 {
			return
		}
		s := beginning(t, int(start)%5)
		for _, msg := range messages(typed) {
			s.send(msg)
			checkFrame(t, s.m)
			if s.quit {
				break
			}
		}
		checkReplay(t, s)
	})
}

// far are the keys that terminals send as longer sequences.
var far = []tea.KeyType{
	tea.KeyUp, tea.KeyDown, tea.KeyLeft, tea.KeyRight, tea.KeyHome, tea.KeyEnd, tea.KeyPgUp, tea.KeyPgDown,
	tea.KeyDelete, tea.KeyShiftTab, tea.KeyF1, tea.KeyInsert,
}

// messages turns bytes into what Bubble Tea makes of what a terminal sends.
func messages(typed []byte) []tea.Msg {
	var out []tea.Msg
	var text []rune
	flush := func() {
		if len(text) > 0 {
			out = append(out, tea.KeyMsg{Type: tea.KeyRunes, Runes: text})
			text = nil
		}
	}
	for i, b := range typed {
		if b > ' ' && b < 0x7f {
			text = append(text, rune(b))
			continue
		}
		flush()
		switch {
		case b == ' ':
			out = append(out, tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
		case b < 0x80:
			out = append(out, tea.KeyMsg{Type: tea.KeyType(b)})
		case b < 0xa0:
			out = append(out, tea.KeyMsg{Type: far[int(b)%len(far)]})
		case b < 0xd0:
			out = append(out, tea.MouseMsg{X: i % 80, Y: int(b-0xa0) / 2, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
		default:
			out = append(out, tea.WindowSizeMsg{Width: 4 * int(b-0xcf), Height: int(b-0xcf) + i%9})
		}
	}
	flush()
	return out
}

// TestEverySizeIsDrawn goes through all screens on terminals of all sizes, the smallest too.
func TestEverySizeIsDrawn(t *testing.T) {
	s := newStage(t).people(12, 50, nil).press("n")
	for _, tab := range tabs {
		s.press(tab.key)
		for _, width := range []int{1, 2, 39, 40, 41, 59, 60, 77, 80, 99, 110, 120, 121, 160, 200} {
			for _, height := range []int{1, 2, 11, 12, 13, 17, 24, 36, 60} {
				s.resize(width, height)
				checkFrame(t, s.m)
			}
		}
		if s.press("esc"); s.m.active != 1 {
			t.Errorf("esc leads from %s to screen %d, not to the courts", tab.name, s.m.active)
		}
	}
}

// TestATerminalThatIsTooSmallSaysSo names both sizes.
func TestATerminalThatIsTooSmallSaysSo(t *testing.T) {
	s := called(t, 2, 8).resize(minWidth-1, minHeight)
	s.shows(fmt.Sprint(minWidth-1), fmt.Sprint(minHeight)).resize(minWidth, minHeight).shows("Court 1")
}
