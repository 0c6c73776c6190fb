package courts

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"club/quadrille/session"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// hall is the context of a night with a game on every court, of a size in cells.
func hall(t *testing.T, courts, width, height int) ui.Context {
	t.Helper()
	now, people := time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC), 0
	desk, err := session.NewDesk(&session.MemoryLog{}, func() time.Time { return now }, func() session.PersonID {
		people++
		return session.PersonID(fmt.Sprint(people))
	})
	if err != nil {
		t.Fatal(err)
	}
	do := func(c session.Command) {
		if _, err := desk.Do(c); err != nil {
			t.Fatal(err)
		}
	}
	do(session.OpenNight{Settings: session.DefaultSettings(1), Courts: courts})
	var round session.PlannedRound
	for i := range courts {
		var ids [4]session.PersonID
		for seat := range ids {
			do(session.AddGuest{Name: fmt.Sprintf("%c%d", 'A'+seat, i+1)})
			ids[seat] = session.PersonID(fmt.Sprint(people))
		}
		court := session.CourtID(fmt.Sprint(i + 1))
		round.Games = append(round.Games, session.PlannedGame{Court: court, A: session.Side(ids[:2]), B: session.Side(ids[2:])})
	}
	do(session.CallRound{Plan: []session.PlannedRound{round}})
	l := desk.Ledger()
	return ui.Context{Ledger: l, Names: ui.NewNames(l.Club()), Now: now, Theme: theme.Plain(), Width: width, Height: height}
}

// TestAClickOnACardMeansItsCourt: what is drawn at a cell and what a click there selects are the
// same court, on halls and terminals of all sizes, scrolled or not.
func TestAClickOnACardMeansItsCourt(t *testing.T) {
	for _, courts := range []int{1, 2, 3, 4, 5, 7, 12, 16, 25} {
		c := hall(t, courts, 80, 18)
		for _, size := range [][2]int{{40, 6}, {40, 20}, {80, 17}, {120, 29}, {200, 53}} {
			c.Width, c.Height = size[0], size[1]
			for selected := range courts {
				s := New()
				s.Select(session.CourtID(fmt.Sprint(selected + 1)))
				checkCards(t, s, c, selected)
			}
		}
	}
}

// checkCards finds the titles of all cards and asks which court lies there.
func checkCards(t *testing.T, s *Courts, c ui.Context, selected int) {
	t.Helper()
	g, seen := s.grid(c), false
	for y, l := range s.Lines(c) {
		if !strings.HasPrefix(l, "┌") {
			continue
		}
		for i := range c.Night().Courts {
			title := fmt.Sprintf("Court %d ", i+1)
			before, _, ok := strings.Cut(l, title)
			if !ok {
				continue
			}
			x := ansi.StringWidth(before)
			if at, ok := g.at(x, y); !ok || at != i {
				t.Fatalf("%dx%d, %d courts: court %d is drawn at %d,%d, where a click means %d (%v)", c.Width, c.Height, g.courts, i+1, x, y, at+1, ok)
			}
			seen = seen || i == selected && strings.HasSuffix(before, ">")
		}
	}
	if !seen {
		t.Fatalf("%dx%d, %d courts: the selected court %d is not drawn with its mark", c.Width, c.Height, g.courts, selected+1)
	}
}

// TestArrowsReachEveryCourt: from the first court right leads to all others one by one, and down
// and up stay within the hall.
func TestArrowsReachEveryCourt(t *testing.T) {
	c := hall(t, 7, 80, 17)
	s := New()
	for i := range 7 {
		if got := s.current(c.Night()); got != i {
			t.Fatalf("after %d presses of right the cursor is on court %d", i, got+1)
		}
		s.walk(c, "right")
	}
	for _, key := range []string{"right", "down", "down", "end", "up", "home", "left", "up"} {
		s.walk(c, key)
		if s.Select(s.selected); c.Night().Court(s.selected) == nil {
			t.Fatalf("%s leads to court %q, which is none", key, s.selected)
		}
	}
	if s.selected != "1" {
		t.Errorf("home and left end on court %s, want 1", s.selected)
	}
}

// TestTheCursorGoesOnToTheNextGame: after a score it is on the next court that plays, round the
// hall, and stays when none does.
func TestTheCursorGoesOnToTheNextGame(t *testing.T) {
	c := hall(t, 4, 80, 17)
	n := c.Night()
	n.Courts[1].Game = 0 // court 2 is free
	for from, want := range map[session.CourtID]session.CourtID{"1": "3", "2": "3", "3": "4", "4": "1"} {
		s := New()
		s.next(n, from)
		if s.selected != want {
			t.Errorf("from court %s the cursor goes to %s, want %s", from, s.selected, want)
		}
	}
	for i := range n.Courts {
		n.Courts[i].Game = 0
	}
	s := New()
	if s.next(n, "3"); s.selected != "3" {
		t.Errorf("with no game left the cursor moves from court 3 to %s", s.selected)
	}
}
