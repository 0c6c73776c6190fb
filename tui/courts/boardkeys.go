package courts

import (
	"slices"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// board is the view of one game that is scored rally by rally. The zero value shows none.
type board struct {
	game   session.GameID
	faults bool  // each rally asks how it was lost
	asked  asked // the rally that waits for the answer
	mirror bool  // seen from the other side of the hall, for as long as the night goes on
	night  session.NightID
}

// on is the game that the board shows, nil when there is none. A game that ends while the board is
// open is shown until it is left, so that a key too many does no harm elsewhere.
func (b *board) on(n *session.Night) *session.Game {
	if n == nil {
		return nil
	}
	return n.Game(b.game)
}

// follow forgets what was about another night, or a game that is no more.
func (b *board) follow(n *session.Night) {
	if b.on(n) == nil {
		b.leave()
	}
	if n != nil && n.ID != b.night {
		b.night, b.mirror = n.ID, false
	}
}

// leave goes back to the courts. Whether faults are noted stays as it was.
func (b *board) leave() { b.game, b.asked = 0, asked{} }

// undoEnd takes back the entry that ended a game, whatever was done since.
func undoEnd(c ui.Context, g *session.Game) ui.Intent {
	for _, a := range slices.Backward(c.Ledger.Actions()) {
		ended := slices.ContainsFunc(a.Events, func(e session.Event) bool {
			f, ok := e.(session.GameFinished)
			return ok && f.Game == g.ID
		})
		if ended && !a.Undone {
			return ui.Do{Command: session.UndoAction{Action: a.ID}}
		}
	}
	return ui.Do{Command: session.Undo{}}
}

// won takes the winner of a rally: it is saved at once, or asks first how the other team lost it.
func (s *Courts) won(g *session.Game, side scoring.Team) ui.Intent {
	if s.board.faults {
		s.board.asked = asked{game: g.ID, rally: scoring.Rally{Won: side}}
		return nil
	}
	return s.rally(g, scoring.Rally{Won: side})
}

func (s *Courts) rally(g *session.Game, r scoring.Rally) ui.Intent {
	s.board.asked = asked{}
	return ui.Do{Command: session.ScoreRally{Game: g.ID, Rally: r}}
}

// note adds an entry to the sheet of a game.
func note(g *session.Game, e scoring.Entry) ui.Intent {
	return ui.Do{Command: session.NoteGame{Game: g.ID, Entry: e}}
}

// Next implements ui.Adviser.
func (s *Courts) Next(c ui.Context) (string, bool) {
	if g := s.board.on(c.Night()); g != nil {
		return s.board.next(c, g), true
	}
	if s.entry.asks() {
		return "say which team retired, a or b; then enter saves", true
	}
	if !s.entry.empty() {
		return s.typedNext(c), true
	}
	return "", false
}

// typedNext says what a score that is being typed wants: the numbers, or only to be saved.
func (s *Courts) typedNext(c ui.Context) string {
	enter, other := "type both numbers, then enter", "t if time ran out, r if a team retired"
	if n := c.Night(); n != nil && len(c.Hall.Courts) > 0 {
		if g := target(n, *n.Court(c.Hall.Courts[s.at(c)].ID)); g != nil {
			if final, err := s.entryAt(c, g).final(g.Rules); err == nil {
				enter = "enter saves this score"
				if final.How() == scoring.Timed && s.entry.how == 0 {
					enter = "time is up: enter saves this score as timed"
				}
			}
		}
	}
	if s.entry.how != 0 { // how it ended is said
		other = "esc drops it"
	}
	return enter + "; " + other
}

// next says what the board waits for.
func (b *board) next(c ui.Context, g *session.Game) string {
	switch p := g.Pause; {
	case !g.Running():
		return "the game is over and saved; enter goes on to the next court, u takes its last rally back"
	case b.asks(g):
		return "one key says how the rally was lost; enter saves it without, esc drops it"
	case p != nil && p.Kind == scoring.MedicalTimeOut:
		return "keep clear and get qualified people; call an ambulance if in doubt. They and your venue decide who plays on (15 minutes by the rulebook)"
	}
	return "after each rally press ← if the left team won it, → if the right team did"
}
