package scheduler

import "context"

// Result is the outcome of one game of a ladder round.
type Result struct {
	Game   Game
	Winner int // 0 = team A, 1 = team B, -1 = level when time ended
}

// NextLadder makes the next round of a winners-up ladder from the results of the round before.
func NextLadder(p Problem, last []Result) (Round, error) {
	p.Rounds = 1
	rounds, err := Plan(context.Background(), p, Budget{})
	if err != nil {
		return Round{}, err
	}
	return rounds[0], nil
}
