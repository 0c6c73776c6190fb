package scheduler

import "context"

// Budget limits the work of a plan.
type Budget struct {
	Moves int // changes that the search tries; 0 = as many as fit the time between two key presses
}

// defaultMoves keeps the plan of a club's night below a sixth of a second on one core.
const defaultMoves = 1_600_000

// Plan makes the rounds that follow the problem's history. It is deterministic for the problem with
// its seed and the budget. When ctx is done it returns the best plan so far, or the
// context's error if it was done before there was one. A [*Conflict] is returned when the
// wishes contradict each other or the first round has no game.
//
// Of a [Ladder] only the first round can be planned, by level or by lot; [NextLadder] makes each
// next one.
func Plan(ctx context.Context, p Problem, b Budget) ([]Round, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if reasons := contradictions(&p); len(reasons) > 0 {
		return nil, &Conflict{reasons}
	}
	if p.Format == Ladder {
		return firstLadder(p)
	}
	if b.Moves <= 0 {
		b.Moves = defaultMoves
	}
	n := newNight(&p)
	s := &search{n: n, moves: b.Moves, d: newDice(p.Seed, 1), most: n.mostCourts()}
	board := s.solve(ctx)
	rounds := board.rounds()
	n.balanceCourts(rounds, s.d)
	if p.LeftoverSingles {
		n.addSingles(rounds)
	}
	if len(rounds) > 0 && len(rounds[0].Games) == 0 {
		return nil, &Conflict{n.whyNoGame(n.first)}
	}
	return rounds, nil
}
