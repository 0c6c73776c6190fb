package courts

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/tui/ui"
)

// board is the view of one game that is scored rally by rally. The zero value shows none.
type board struct {
	game   session.GameID
	faults bool  // each rally asks how it was lost
	asked  asked // the rally that waits for the answer
}

// on is the game that the board shows, nil when there is none. A game that ends while the board is
// open is shown until it is left, so that a key too many does no harm elsewhere.
func (b *board) on(n *session.Night) *session.Game {
	if n == nil {
		return nil
	}
	return n.Game(b.game)
}

// leave goes back to the courts. Whether faults are noted stays as it was.
func (b *board) leave() { b.game, b.asked = 0, asked{} }

// pressBoard handles keys while a game is scored rally by rally: one key a rally.
func (s *Courts) pressBoard(c ui.Context, g *session.Game, key string) (ui.Intent, bool) {
	switch {
	case !g.Running():
		return s.pressOver(c, g, key)
	case s.board.asks(g):
		return s.pressFault(g, key)
	}
	switch key {
	case "left", "a":
		return s.won(g, scoring.A), true
	case "right", "b":
		return s.won(g, scoring.B), true
	case "backspace":
		return ui.Do{Command: session.UndoRally{Game: g.ID}}, true
	case "F":
		s.board.faults = !s.board.faults
	case "e":
		return note(g, scoring.Entry{Kind: scoring.EndsChanged}), true
	case "m":
		return ui.Show{Dialog: gameMenu(c, g)}, true
	case "esc", "enter":
		s.board.leave()
	case "?":
		return nil, false
	default:
		if len(key) == 1 && key[0] >= '0' && key[0] <= '9' {
			// A score is being typed although the board is open: it is this court's final score.
			s.board.leave()
			s.selected, s.entry = g.Court, entry{}
			s.entry.press(key)
			return nil, true
		}
		return nil, len(key) == 1
	}
	return nil, true
}

// pressOver handles keys while the result of a game that has just ended is shown.
func (s *Courts) pressOver(c ui.Context, g *session.Game, key string) (ui.Intent, bool) {
	switch key {
	case "esc", "enter":
		s.board.leave()
		s.next(c.Night(), g.Court)
	case "n":
		s.board.leave()
		return nil, false
	case "u":
		return undoEnd(c, g), true
	case "?":
		return nil, false
	default:
		return nil, len(key) == 1 || key == "left" || key == "right" || key == "backspace"
	}
	return nil, true
}

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

// won takes the winner of a rally: it is saved at once, or asks first how the other side lost it.
func (s *Courts) won(g *session.Game, side scoring.Side) ui.Intent {
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
	if !s.entry.empty() {
		return "type both numbers, then enter; t if time ran out, r if a side gave up", true
	}
	return "", false
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
	return "after each rally press ← if the left side won it, → if the right side did"
}

// keys lists the keys of the board.
func (b *board) keys(g *session.Game) []key.Binding {
	switch {
	case !g.Running():
		return []key.Binding{ui.Bind("go on", "enter", "enter", "esc"), ui.Bind("undo", "u", "u")}
	case b.asks(g):
		return questionKeys(g)
	}
	faults := "faults"
	if b.faults {
		faults = "no faults"
	}
	keys := []key.Binding{
		ui.Bind("who won", "←→", "left", "right", "a", "b"),
		ui.Bind("take back", "bksp", "backspace"),
		ui.Bind("more", "m", "m"),
		ui.Bind(faults, "F", "F"),
		ui.Bind("back", "esc", "esc", "enter"),
	}
	if g.EndsDue() {
		keys = append(keys, ui.Bind("ends changed", "e", "e"))
	}
	return keys
}
