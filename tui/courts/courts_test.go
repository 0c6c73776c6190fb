package courts

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"club/quadrille/session"
	"club/quadrille/session/hall"
	"club/quadrille/session/sessiontest"
	"club/quadrille/tui/line"
	"club/quadrille/tui/theme"
	"club/quadrille/tui/ui"
)

// hallOf is the context of a night with a game on every court, of a size in cells.
func hallOf(t *testing.T, courts, width, height int) ui.Context {
	t.Helper()
	d := sessiontest.New(t)
	d.Must(session.OpenNight{Settings: session.DefaultSettings(1), Courts: courts})
	var round session.PlannedRound
	for i := range courts {
		var ids [4]session.PersonID
		for seat := range ids {
			d.Must(session.AddGuest{Name: fmt.Sprintf("%c%d", 'A'+seat, i+1)})
			ids[seat] = d.Night().Roll[4*i+seat].Person
		}
		court := session.CourtID(fmt.Sprint(i + 1))
		round.Games = append(round.Games, session.PlannedGame{Court: court, A: session.Team(ids[:2]), B: session.Team(ids[2:])})
	}
	d.Must(session.CallRound{Plan: []session.PlannedRound{round}})
	l := d.Ledger()
	stands, _ := hall.Of(l, nil, d.Clock)
	return ui.Context{Ledger: l, Hall: stands, Names: ui.NewNames(l.Club()), Now: d.Clock, Theme: theme.Plain(), Width: width, Height: height}
}

// TestAClickOnACardMeansItsCourt: what is drawn at a cell and what a click there selects are the
// same court, on halls and terminals of all sizes, scrolled or not.
func TestAClickOnACardMeansItsCourt(t *testing.T) {
	for _, courts := range []int{1, 2, 3, 4, 5, 7, 12, 16, 25} {
		c := hallOf(t, courts, 80, 18)
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

// checkCards finds the numbers of all courts that are drawn and asks which court lies there.
func checkCards(t *testing.T, s *Courts, c ui.Context, selected int) {
	t.Helper()
	g := s.layout(c)
	lines := s.Lines(c)
	for i := g.top * g.columns; i < min(g.courts, (g.top+g.shown)*g.columns); i++ {
		x, y := i%g.columns*g.width, (i/g.columns-g.top)*g.height
		if y >= g.space {
			continue
		}
		if at, ok := g.find(x+g.width/2, y); !ok || at != i {
			t.Fatalf("%dx%d, %d courts: a click on court %d means %d (%v)", c.Width, c.Height, g.courts, i+1, at+1, ok)
		}
		own := ""
		for _, l := range lines[y:min(len(lines), y+g.height)] {
			own += line.Cut(ansi.TruncateLeft(l, x, ""), g.width) + "\n"
		}
		for _, player := range []string{"A", "B", "C", "D"} {
			if name := fmt.Sprintf("%s%d", player, i+1); !strings.Contains(own, name) {
				t.Fatalf("%dx%d, %d courts: %s is not drawn where court %d is:\n%s", c.Width, c.Height, g.courts, name, i+1, own)
			}
		}
		if marked := strings.Contains(own, "▌"); marked != (i == selected) {
			t.Fatalf("%dx%d, %d courts: court %d has the cursor: %v, and %d is selected:\n%s", c.Width, c.Height, g.courts, i+1, marked, selected+1, own)
		}
	}
	if at := selected / g.columns; at < g.top || at >= g.top+g.shown {
		t.Fatalf("%dx%d, %d courts: the selected court %d is not drawn", c.Width, c.Height, g.courts, selected+1)
	}
}

// TestArrowsReachEveryCourt: from the first court right leads to all others one by one, and down
// and up stay within the hall.
func TestArrowsReachEveryCourt(t *testing.T) {
	c := hallOf(t, 7, 80, 17)
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
	c := hallOf(t, 4, 80, 17)
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

// TestAnyCourtInThreeKeys: g and the number of a court, and enter only where another number begins alike.
func TestAnyCourtInThreeKeys(t *testing.T) {
	c := hallOf(t, 24, 80, 17)
	for i := range 24 {
		s, want := New(), session.CourtID(fmt.Sprint(i+1))
		keys := 0
		press := func(k tea.KeyMsg) {
			keys++
			ui.Press(s, c, k)
		}
		press(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("g")})
		for _, r := range string(want) {
			press(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
		}
		if s.Typing() {
			press(tea.KeyMsg{Type: tea.KeyEnter})
		}
		if s.selected != want || s.Typing() || keys > 3 {
			t.Errorf("court %s: %d keys lead to court %s", want, keys, s.selected)
		}
	}
}

// TestNothingOfACourtIsCut: short names, digits and lines are drawn whole at every size.
func TestNothingOfACourtIsCut(t *testing.T) {
	for _, courts := range []int{1, 2, 4, 6, 9, 12, 24} {
		c := hallOf(t, courts, 80, 17)
		for _, size := range [][2]int{{80, 17}, {120, 29}, {160, 40}, {200, 53}, {300, 90}} {
			c.Width, c.Height = size[0], size[1]
			s := New()
			for i, l := range s.rows(c, s.layout(c)) {
				if strings.Contains(l, "…") {
					t.Fatalf("%dx%d, %d courts: line %d is cut: %s", size[0], size[1], courts, i, l)
				}
			}
		}
	}
}
