package session

import (
	"fmt"

	"club/quadrille/scoring"
)

// ScoreRally notes who won a rally of a game that is scored rally by rally. The rally that decides
// the game also ends it.
type ScoreRally struct {
	Game  GameID
	Rally scoring.Rally
}

func (c ScoreRally) decide(l *Ledger, env Env) ([]Event, error) {
	n, g, err := runningGame(l, c.Game)
	if err != nil {
		return nil, err
	}
	if err := n.held(); err != nil {
		return nil, err
	}
	for _, id := range g.Players() {
		if err := n.barred(l.club, id); err != nil {
			return nil, fmt.Errorf("court %s: %s may have a head injury: send on a sub, retire the team, or make the game void (m, i)", g.Court, l.club.Name(id))
		}
	}
	events := []Event{RallyWon(c)}
	after := g.State.After(c.Rally)
	if !after.Done {
		return events, nil
	}
	final, err := g.Rules.Final(after.Score.A, after.Score.B, scoring.Played)
	if err != nil {
		return nil, err
	}
	return append(events, GameFinished{g.ID, final}), nil
}

// FinishGame enters the final score of a game.
type FinishGame struct {
	Game  GameID
	Final scoring.Final
}

func (c FinishGame) decide(l *Ledger, env Env) ([]Event, error) {
	if _, _, err := runningGame(l, c.Game); err != nil {
		return nil, err
	}
	return []Event{GameFinished(c)}, nil
}

// CorrectScore replaces the score of a finished game of tonight.
type CorrectScore struct {
	Game  GameID
	Final scoring.Final
}

func (c CorrectScore) decide(l *Ledger, _ Env) ([]Event, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, err
	}
	g := n.Game(c.Game)
	switch {
	case g == nil:
		return nil, fmt.Errorf("tonight has no game %d", c.Game)
	case g.Running():
		return nil, fmt.Errorf("game %d still goes on: enter its score", c.Game)
	case *g.Final == c.Final:
		return nil, fmt.Errorf("game %d has that score already", c.Game)
	}
	return []Event{ScoreCorrected(c)}, nil
}

// UndoRally takes the last entry of a running game's sheet back, most often a rally, whatever happened
// elsewhere since.
type UndoRally struct{ Game GameID }

func (c UndoRally) decide(l *Ledger, env Env) ([]Event, error) {
	if _, _, err := runningGame(l, c.Game); err != nil {
		return nil, err
	}
	actions := l.Actions()
	for i := len(actions) - 1; i >= 0; i-- {
		a := actions[i]
		if a.Undone {
			continue
		}
		if id, ok := notedOf(a.Events[0]); ok && id == c.Game {
			return UndoAction{a.ID}.decide(l, env)
		}
	}
	return nil, fmt.Errorf("no rally of this game is noted yet")
}

// notedOf is the game on whose sheet an event is an entry.
func notedOf(e Event) (GameID, bool) {
	switch e := e.(type) {
	case RallyWon:
		return e.Game, true
	case GameNoted:
		return e.Game, true
	}
	return 0, false
}

func runningGame(l *Ledger, id GameID) (*Night, *Game, error) {
	n, err := openNight(l)
	if err != nil {
		return nil, nil, err
	}
	g := n.Game(id)
	switch {
	case g == nil:
		return nil, nil, fmt.Errorf("tonight has no game %d", id)
	case !g.Running():
		return nil, nil, fmt.Errorf("court %s: this game is over; correct its score instead", g.Court)
	}
	return n, g, nil
}
