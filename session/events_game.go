package session

import (
	"time"

	"club/quadrille/scoring"
)

// GameNoted is an entry of a game's sheet other than a rally: a time-out, a change of ends, something
// set right, a side that gives up. An entry that ends the game has GameFinished behind it in the same
// action.
type GameNoted struct {
	Game  GameID        `json:"game"`
	Entry scoring.Entry `json:"entry"`
}

func (e GameNoted) apply(f *fold, at time.Time) error {
	_, g, err := f.running(e.Game)
	if err != nil {
		return err
	}
	return g.note(e.Entry, at)
}
