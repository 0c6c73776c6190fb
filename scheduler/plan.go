package scheduler

import (
	"context"
	"slices"
)

// Budget limits the work of a plan.
type Budget struct {
	Moves int // changes that the search tries; 0 = as many as fit the time between two key presses
}

// defaultMoves keeps the plan of a club's night below a sixth of a second on one core.
const defaultMoves = 2_000_000

// usualMoves is the budget where none is given: fewer moves where each costs more.
func usualMoves(p *Problem) int {
	moves := defaultMoves
	if slices.ContainsFunc(p.People, func(x Person) bool { return x.Level != 0 }) {
		moves /= 2
	}
	if len(p.Together)+len(p.NeverMeet)+len(p.NeverPartner) > 0 {
		moves /= 2
	}
	if p.MaxRun > 0 {
		moves /= 4
	}
	return moves
}

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
		b.Moves = usualMoves(&p)
	}
	rounds := arrangeRounds(ctx, p, b)
	if len(rounds) > 0 && len(rounds[0].Games) == 0 {
		n := newNight(&p)
		round, ok := n.lastResort()
		if !ok {
			return nil, &Conflict{n.whyNoGame(n.first)}
		}
		p.History = append(append([]Round(nil), p.History...), round)
		p.Rounds--
		rounds = append([]Round{round}, arrangeRounds(ctx, p, b)...)
	}
	return rounds, nil
}

// arrangeRounds searches for the best rounds, gives their games courts, and lets those left over play
// singles.
func arrangeRounds(ctx context.Context, p Problem, b Budget) []Round {
	n := newNight(&p)
	s := &search{n: n, moves: b.Moves, d: newDice(p.Seed, 1), most: n.mostCourts()}
	rounds := s.solve(ctx).rounds()
	n.orderRounds(rounds)
	n.balanceCourts(rounds, s.d)
	if p.LeftoverSingles {
		n.addSingles(rounds)
	}
	n.balanceHome(rounds)
	return rounds
}

// lastResort looks for any single game of the first round, where wishes are so tight that the search
// found none.
func (n *night) lastResort() (Round, bool) {
	books := newLedger(n)
	r := Rolling{
		People: n.p.People, Courts: n.p.Courts, Format: n.p.Format, Seed: n.p.Seed,
		Together: n.p.Together, NeverPartner: n.p.NeverPartner, NeverMeet: n.p.NeverMeet,
	}
	for _, i := range n.here[n.first] {
		if n.p.MaxRun == 0 || books.run[i] < n.p.MaxRun {
			r.Waiting = append(r.Waiting, Waiting{Player: i})
		} else {
			r.Running = append(r.Running, Game{A: Team{i, Nobody}, B: Team{Nobody, Nobody}})
		}
	}
	for _, r.Court = range n.openCourts(n.first) {
		c, err := newCaller(r)
		if err != nil || !c.enough() {
			continue
		}
		if g, ok := c.first(); ok {
			round := Round{Games: []Game{g}}
			for _, i := range n.here[n.first] {
				if !slices.Contains(g.Players(), i) {
					round.Out = append(round.Out, i)
				}
			}
			return round, true
		}
	}
	return Round{}, false
}
