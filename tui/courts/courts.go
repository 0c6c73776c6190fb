// Package courts is the main screen: every court at a glance, and the place where scores are
// entered, as a final score or rally by rally.
package courts

import (
	"fmt"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// Courts is the screen of all courts.
type Courts struct {
	selected session.CourtID
	entry    entry
	board    board
	finder   finder
	saved    time.Time // when a score was saved by the key before: an enter right after is one too many
	cache    cache
}

// New makes the screen.
func New() *Courts { return &Courts{} }

// Typing implements ui.Screen: while a score is typed or a game is scored by rallies, all letters
// belong to it.
func (s *Courts) Typing() bool { return !s.entry.empty() || s.board.game != 0 || s.finder.on }

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

// Follow implements ui.Follower: a game that is no more has no board.
func (s *Courts) Follow(n *session.Night) { s.board.follow(n) }

// target is the game that a score typed on a court is about: the one that goes on there, or else
// the one that ended there in this round, whose score is then corrected.
func target(n *session.Night, court session.Court) *session.Game {
	if g := n.Game(court.Game); g != nil {
		return g
	}
	return n.LastOn(court.ID)
}

// startEntry begins a score with its first digit.
func (s *Courts) startEntry(n *session.Night, court session.Court, key string) ui.Intent {
	if !court.Open && target(n, court) == nil {
		return closedRefusal(court)
	}
	if target(n, court) == nil {
		return ui.Refuse{Err: fmt.Errorf("court %s has no game to score: arrows choose a court", court.ID)}
	}
	s.selected, s.entry, s.saved = court.ID, entry{}, time.Time{}
	s.entry.press(key)
	return nil
}

// closedRefusal says that nothing is played on a court, and how to change it.
func closedRefusal(court session.Court) ui.Intent {
	return ui.Refuse{Err: fmt.Errorf("court %s is closed: arrows choose another, m o opens it", court.ID)}
}

// open does what Enter means on a court: score its game by rallies, or say what else there is.
func (s *Courts) open(c ui.Context, court session.Court) ui.Intent {
	switch {
	case court.Game != 0:
		s.board.game = court.Game
		return nil
	case !court.Open && target(c.Night(), court) == nil:
		return closedRefusal(court)
	case target(c.Night(), court) != nil:
		return ui.Refuse{Err: fmt.Errorf("court %s is done: type a score to correct it; m has more", court.ID)}
	}
	return ui.Refuse{Err: fmt.Errorf("court %s has no game yet; m has more", court.ID)}
}

// save is Enter on a score that is being typed.
func (s *Courts) save(c ui.Context, court session.Court) ui.Intent {
	g := target(c.Night(), court)
	if g == nil {
		s.entry = entry{}
		return ui.Refuse{Err: fmt.Errorf("court %s has no game any more", court.ID)}
	}
	final, err := s.entryAt(c, g).final(g.Rules)
	if s.entry.refused = err != nil; err != nil {
		return nil // the panel says what is wrong, until the entry is changed
	}
	if !s.entry.sure && justCalled(c, g) {
		s.entry.sure = true
		return ui.Refuse{Err: fmt.Errorf("this game on court %s has only begun: enter again saves its score; to correct the one before, esc and then h", court.ID)}
	}
	return s.finish(c, g, final)
}

// entryAt is what is typed, with whether the clock may have ended the game that it is about.
func (s *Courts) entryAt(c ui.Context, g *session.Game) *entry {
	e := s.entry
	e.timeUp = c.Night().OutOfTime(g, c.Now)
	return &e
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
func (s *Courts) Leave() { s.entry, s.finder = entry{}, finder{} }

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

// Click implements ui.Screen: a click selects a court, a click on the selected one opens it. On the board a
// click on a half of the court says that the team there won the rally.
func (s *Courts) Click(c ui.Context, x, y int) ui.Intent {
	n := c.Night()
	if n == nil {
		return nil
	}
	if g := s.board.on(n); g != nil {
		return s.clickHalf(c, g, x, y)
	}
	i, ok := s.layout(c).find(x, y)
	if !ok {
		return nil
	}
	if n.Courts[i].ID == s.selected && s.entry.empty() {
		return s.open(c, n.Courts[i])
	}
	s.selected, s.entry = n.Courts[i].ID, entry{}
	return nil
}
