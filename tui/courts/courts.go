// Package courts is the main screen: every court at a glance, and the place where scores are
// entered, as a final score or rally by rally.
package courts

import (
	"errors"
	"fmt"
	"time"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// Courts is the screen of all courts.
type Courts struct {
	selected session.CourtID
	entry    entry
	board    board
	saved    time.Time // when a score was saved by the key before: an enter right after is one too many
	cache    cardCache
}

// New makes the screen.
func New() *Courts { return &Courts{} }

// Typing implements ui.Screen: while a score is typed or a game is scored by rallies, all letters
// belong to it.
func (s *Courts) Typing() bool { return !s.entry.empty() || s.board.game != 0 }

// current is the index of the selected court; a court that is gone gives way to the first one.
func (s *Courts) current(n *session.Night) int {
	for i, c := range n.Courts {
		if c.ID == s.selected {
			return i
		}
	}
	return 0
}

// Select puts the cursor on a court.
func (s *Courts) Select(id session.CourtID) { s.selected = id }

// Press implements ui.Screen.
func (s *Courts) Press(c ui.Context, k tea.KeyMsg) (ui.Intent, bool) {
	n := c.Night()
	if n == nil || len(n.Courts) == 0 {
		return nil, false
	}
	since := c.Now.Sub(s.saved)
	twice := k.Type == tea.KeyEnter && !s.saved.IsZero() && since >= 0 && since < time.Second
	if s.saved = (time.Time{}); twice {
		return nil, true
	}
	if g := s.board.on(n); g != nil {
		return s.pressBoard(c, g, k.String())
	}
	s.board.leave()
	court := n.Courts[s.current(n)]
	s.selected = court.ID
	if !s.entry.empty() {
		return s.pressEntry(c, court, k.String())
	}
	return s.pressGrid(c, court, k.String())
}

// pressGrid handles keys while nothing is typed.
func (s *Courts) pressGrid(c ui.Context, court session.Court, key string) (ui.Intent, bool) {
	n, columns := c.Night(), s.grid(c).columns
	switch key {
	case "left":
		s.move(n, -1)
	case "right":
		s.move(n, 1)
	case "up":
		s.move(n, -columns)
	case "down":
		s.move(n, columns)
	case "home":
		s.selected = n.Courts[0].ID
	case "end":
		s.selected = n.Courts[len(n.Courts)-1].ID
	case "enter":
		return s.open(c, court), true
	case "x":
		if g := n.Game(court.Game); g != nil {
			return ui.Show{Dialog: replaceMenu(c, g)}, true
		}
		return ui.Refuse{Err: fmt.Errorf("court %s has no game: there is nobody to put somebody in for", court.ID)}, true
	case "m":
		return ui.Show{Dialog: gridMenu(c, court)}, true
	default:
		return s.startEntry(n, court, key)
	}
	return nil, true
}

// target is the game that a score typed on a court is about: the one that goes on there, or else
// the one that ended there in this round, whose score is then corrected.
func target(n *session.Night, court session.Court) *session.Game {
	if g := n.Game(court.Game); g != nil {
		return g
	}
	return n.LastOn(court.ID)
}

// startEntry begins a score with its first digit.
func (s *Courts) startEntry(n *session.Night, court session.Court, key string) (ui.Intent, bool) {
	if len(key) != 1 || key[0] < '0' || key[0] > '9' {
		return nil, false
	}
	if target(n, court) == nil {
		return ui.Refuse{Err: fmt.Errorf("court %s has no game to score: arrows choose a court", court.ID)}, true
	}
	s.entry = entry{}
	s.entry.press(key)
	return nil, true
}

// open does what Enter means on a court: score its game by rallies, or say what else there is.
func (s *Courts) open(c ui.Context, court session.Court) ui.Intent {
	switch {
	case court.Game != 0:
		s.board.game = court.Game
		return nil
	case target(c.Night(), court) != nil:
		return ui.Refuse{Err: fmt.Errorf("court %s is done: type a score to correct it; m has more", court.ID)}
	}
	return ui.Refuse{Err: fmt.Errorf("court %s has no game yet; m has more", court.ID)}
}

// The desk's undo takes back what is half typed, before it takes back anything that is saved. Its redo
// would bring back something that nobody looks at.
const (
	undoKey = "ctrl+z"
	redoKey = "ctrl+y"
)

var errTyped = errors.New("a score is being typed: enter saves it, esc drops it")

// pressEntry handles keys while a score is typed.
func (s *Courts) pressEntry(c ui.Context, court session.Court, key string) (ui.Intent, bool) {
	g := target(c.Night(), court)
	switch key {
	case "esc", undoKey:
		s.entry = entry{}
		return nil, true
	case redoKey:
		return ui.Refuse{Err: errTyped}, true
	case "enter":
		if g == nil {
			s.entry = entry{}
			return ui.Refuse{Err: fmt.Errorf("court %s has no game any more", court.ID)}, true
		}
		final, err := s.entry.final(g.Rules)
		if s.entry.refused = err != nil; err != nil {
			return nil, true // the panel says what is wrong, until the entry is changed
		}
		if !s.entry.sure && justCalled(c, g) {
			s.entry.sure = true
			return ui.Refuse{Err: fmt.Errorf("this game on court %s has only begun: enter again saves its score; to correct the one before, esc and then h", court.ID)}, true
		}
		return s.finish(c, g, final), true
	}
	if s.entry.press(key) {
		return nil, true
	}
	if len(key) > 1 {
		return nil, false
	}
	return ui.Refuse{Err: errTyped}, true
}

// justCalled tells whether a game was called by the score of the one before, less than a minute ago:
// a score typed now is more likely meant for that one.
func justCalled(c ui.Context, g *session.Game) bool {
	before := c.Night().FinishedOn(g.Court)
	return g.Running() && g.Round == 0 && before != nil && before.End == g.Call && c.Now.Sub(g.Called) < time.Minute
}

// finish sends a final score, or the correction of one; once it is saved the cursor goes on to the
// next court that plays.
func (s *Courts) finish(c ui.Context, g *session.Game, final scoring.Final) ui.Intent {
	court := g.Court
	after := func(l *session.Ledger) {
		s.entry, s.saved = entry{}, c.Now
		s.next(l.Night(), court)
	}
	if !g.Running() {
		return ui.Do{Command: session.CorrectScore{Game: g.ID, Final: final}, After: after}
	}
	return ui.Do{Command: session.FinishGame{Game: g.ID, Final: final}, After: after}
}

// Leave implements ui.Leaver: a score that was not saved is not left lying about.
func (s *Courts) Leave() { s.entry = entry{} }

// next moves from a court to the next one with a game, if there is any.
func (s *Courts) next(n *session.Night, from session.CourtID) {
	if n == nil {
		return
	}
	s.selected = from
	at := s.current(n)
	for i := 1; i < len(n.Courts); i++ {
		if c := n.Courts[(at+i)%len(n.Courts)]; c.Game != 0 {
			s.selected = c.ID
			return
		}
	}
}

func (s *Courts) move(n *session.Night, by int) {
	if to := s.current(n) + by; to >= 0 && to < len(n.Courts) {
		s.selected = n.Courts[to].ID
	}
}

// Click implements ui.Screen: a click selects a court, a click on the selected one opens it.
func (s *Courts) Click(c ui.Context, x, y int) ui.Intent {
	n := c.Night()
	if n == nil || s.board.on(n) != nil {
		return nil
	}
	i, ok := s.grid(c).at(x, y)
	if !ok {
		return nil
	}
	if n.Courts[i].ID == s.selected && s.entry.empty() {
		return s.open(c, n.Courts[i])
	}
	s.selected, s.entry = n.Courts[i].ID, entry{}
	return nil
}

// Keys implements ui.Screen.
func (s *Courts) Keys(c ui.Context) []key.Binding {
	if g := s.board.on(c.Night()); g != nil {
		return s.board.keys(g)
	}
	switch {
	case !s.entry.empty():
		return []key.Binding{
			ui.Bind("save", "enter", "enter"),
			ui.Bind("drop", "esc", "esc"),
			ui.Bind("swap sides", "tab", "tab"),
			ui.Bind("time ran out", "t", "t"),
			ui.Bind("gave up", "r", "r"),
		}
	}
	return []key.Binding{
		ui.Bind("court", "arrows", "left", "right", "up", "down"),
		ui.Bind("score", "digits", "0", "1", "2", "3", "4", "5", "6", "7", "8", "9"),
		ui.Bind("rally by rally", "enter", "enter"),
		ui.Bind("put in", "x", "x"),
		ui.Bind("more", "m", "m"),
	}
}
