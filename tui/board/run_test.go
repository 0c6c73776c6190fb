package board

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/session/public"
)

// TestACallComesFirst: whoever is called looks for a court at once, whatever was shown; and a desk that goes away
// leaves what was seen.
func TestACallComesFirst(t *testing.T) {
	now := time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)
	m := newModel(Options{Now: func() time.Time { return now }})
	m.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	before := hall(4, 2)
	m.Update(News{View: before})
	now = now.Add(47 * time.Second)
	m.Update(secondMsg{})
	if m.board.passed != 47*time.Second {
		t.Fatalf("after 47 s the turns are at %v", m.board.passed)
	}
	m.Update(News{View: hall(4, 2)})
	if m.board.passed != 47*time.Second {
		t.Error("a score begins the turns anew")
	}
	called := hall(4, 2)
	called.Courts[0].State = public.Called
	m.Update(News{View: called})
	now = now.Add(3 * time.Second)
	m.Update(secondMsg{})
	m.Update(News{View: called})
	if m.board.passed != 3*time.Second {
		t.Errorf("3 s after a call the turns are at %v", m.board.passed)
	}
	m.Update(News{})
	if b := m.board; !b.away || b.view != called {
		t.Errorf("without the desk the board is away %v and shows %p, want %p", b.away, b.view, called)
	}
	m.Update(News{View: before})
	if m.board.away {
		t.Error("the desk is back, and the board says that it is not")
	}
}

// TestListsTakeTheirTurns after the call of one court of several, and wait where a whole round is called.
func TestListsTakeTheirTurns(t *testing.T) {
	v := hall(4, 6)
	for called := range len(v.Courts) + 1 {
		for i := range v.Courts {
			v.Courts[i].State = public.Playing
			if i < called {
				v.Courts[i].State = public.Called
			}
		}
		seen := false
		for second := range 120 {
			frame := frame(v, [2]int{80, 24}, time.Duration(second)*time.Second, func(b *Board) { b.pen = newPen(true) })
			seen = seen || strings.Contains(frame, "S T A N D I N G S") || strings.Contains(frame, "Standings")
		}
		if want := called < 2; seen != want {
			t.Errorf("with %d of 4 courts called the standings have their turn: %v, want %v", called, seen, want)
		}
	}
}

// TestABoardTakesNoKeys but those that end it.
func TestABoardTakesNoKeys(t *testing.T) {
	for key, ends := range map[string]bool{"q": true, "x": false, "n": false, "1": false} {
		m := newModel(Options{Now: time.Now})
		_, cmd := m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(key)})
		if (cmd != nil) != ends {
			t.Errorf("%s ends the board: %v", key, cmd != nil)
		}
	}
	for _, key := range []tea.KeyType{tea.KeyEsc, tea.KeyCtrlC} {
		if _, cmd := newModel(Options{Now: time.Now}).Update(tea.KeyMsg{Type: key}); cmd == nil {
			t.Errorf("%v does not end the board", key)
		}
	}
}
