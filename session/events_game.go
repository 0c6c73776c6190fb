package session

import (
	"fmt"
	"time"

	"club/quadrille/scoring"
)

// GameNoted is an entry of a game's sheet other than a rally: a time-out, a change of ends, something
// set right, a team that gives up. An entry that ends the game has GameFinished behind it in the same
// action.
type GameNoted struct {
	Game  GameID        `json:"game"`
	Entry scoring.Entry `json:"entry"`
	// Rallies is how many counted when the entry was made, for one that names a rally by its number:
	// without an earlier rally the number would mean another one.
	Rallies int `json:"rallies,omitempty"`
}

func (e GameNoted) apply(f *fold, at time.Time) error {
	_, g, err := f.running(e.Game)
	if err != nil {
		return err
	}
	if e.Entry.At > 0 && e.Rallies != len(g.Rallies) {
		return fmt.Errorf("court %s: rally %d was named when %d were noted, and now there are %d",
			g.Court, e.Entry.At, e.Rallies, len(g.Rallies))
	}
	return g.note(e.Entry, at)
}
