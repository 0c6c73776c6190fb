package courtside

import (
	"errors"

	"club/quadrille/scoring"
)

// MostRallies is how many rallies a board takes, so that its page stays small: far more than a game has.
const MostRallies = 300

// Board is the game of a court as far as its rallies were tapped on a phone. Nobody but that phone knows of it before
// its score is sent.
type Board struct {
	Rallies string // as scoring.ParseRallies reads them
	Score   scoring.Score
	Serving scoring.Team
	Call    string // as the server says it, "" once the game is over
	Over    bool   // played to its end
}

// ErrRallies is returned for what are no rallies of a game.
var ErrRallies = errors.New("these are no rallies of a game: begin again")

// Board folds the rallies that a phone has tapped, a letter for the team that won each. Those behind the end of the game
// are dropped.
func (c Court) Board(rallies string) (Board, error) {
	if len(rallies) > MostRallies {
		return Board{}, ErrRallies
	}
	won, err := scoring.ParseRallies(rallies)
	if err != nil {
		return Board{}, ErrRallies
	}
	state, counted := scoring.Start(c.Rules, scoring.A), 0
	for counted < len(won) && !state.Done {
		state = state.After(won[counted])
		counted++
	}
	b := Board{Rallies: scoring.FormatRallies(won[:counted]), Score: state.Score, Serving: state.Serving, Over: state.Done}
	if !b.Over {
		b.Call = state.Call()
	}
	return b, nil
}
