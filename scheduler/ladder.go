package scheduler

// Result is the outcome of one game of a ladder round.
type Result struct {
	Game   Game
	Winner int // 0 = team A, 1 = team B, -1 = level when time ended
}

func firstLadder(p Problem) ([]Round, error) { return nil, nil }

// NextLadder makes the next round of a winners-up ladder from the results of the round before.
func NextLadder(p Problem, last []Result) (Round, error) { return Round{}, nil }
