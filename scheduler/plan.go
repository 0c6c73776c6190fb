package scheduler

import (
	"context"
	"slices"

	"club/quadrille/scheduler/ladder"
	"club/quadrille/scheduler/lately"
	"club/quadrille/scheduler/lineup"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/search"
)

// Budget limits the work of a plan.
type Budget struct {
	Moves  int // changes that the search tries; 0 = as many as fit the time between two key presses
	Effort int // where Moves is 0: so many times as many; 0 = 1
}

// of fills in the usual moves.
func (b Budget) of(p *Problem) Budget {
	if b.Moves <= 0 {
		b.Moves = search.UsualMoves(p) * max(1, b.Effort)
	}
	return b
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
	if reasons := night.Contradictions(&p); len(reasons) > 0 {
		return nil, &Conflict{Reasons: reasons}
	}
	if p.Format == Ladder {
		return ladder.First(p)
	}
	asked := p
	b = b.of(&p)
	rounds := search.Rounds(ctx, p, b.Moves)
	if len(rounds) > 0 && len(rounds[0].Games) == 0 {
		n := night.New(&p)
		round, ok := lastResort(n)
		if !ok {
			return nil, &Conflict{Reasons: n.WhyNoGame(n.First)}
		}
		p.History = append(append([]Round(nil), p.History...), round)
		p.Rounds--
		first := len(p.History)
		p.Pins = slices.DeleteFunc(slices.Clone(p.Pins), func(pin Pin) bool { return pin.Round < first })
		rounds = append([]Round{round}, search.Rounds(ctx, p, b.Moves)...)
	}
	return lately.Arrange(night.New(&p), rounds), unpinned(asked, rounds)
}

// unpinned is a [*Conflict] about what was pinned and is not in the rounds, nil where all of it is.
func unpinned(p Problem, rounds []Round) error {
	var reasons []string
	for _, pin := range p.Pins {
		if at := pin.Round - len(p.History); at >= len(rounds) || !pin.KeptIn(rounds[at]) {
			reasons = append(reasons, pin.Words(&p)+" is not possible: no round was found that has it and is valid")
		}
	}
	if len(reasons) == 0 && len(p.Pins) > 0 {
		for _, v := range Audit(p, rounds) {
			reasons = append(reasons, "with what was pinned no valid round was found: "+v.Text)
		}
	}
	if len(reasons) == 0 {
		return nil
	}
	return &Conflict{Reasons: reasons}
}

// Unpinnable says why a pin cannot be kept beside those of the problem, empty where nothing is known against it.
func Unpinnable(p Problem, pin Pin) string {
	p.Pins = append(slices.Clip(p.Pins), pin)
	return night.Unpinnable(&p)
}

// Clashes lists what makes the problem impossible before any planning.
func Clashes(p Problem) []Clash { return night.Clashes(&p) }

// Possible says why the next round of the problem can have no game, nil when it can have one. It looks for
// one game and plans nothing, so it takes next to no time. Of a ladder only the wishes are judged.
func Possible(p Problem) error {
	if reasons := night.Contradictions(&p); len(reasons) > 0 {
		return &Conflict{Reasons: reasons}
	}
	if p.Rounds < 1 || p.Format == Ladder {
		return nil
	}
	n := night.New(&p)
	if _, ok := lastResort(n); !ok {
		return &Conflict{Reasons: n.WhyNoGame(n.First)}
	}
	return nil
}

// lastResort looks for any single game of the first round, where wishes are so tight that the search
// found none.
func lastResort(n *night.Night) (Round, bool) {
	books := lineup.NewRecord(n)
	r := Rolling{
		People: n.Problem.People, Courts: n.Problem.Courts, Format: n.Problem.Format, Seed: n.Problem.Seed,
		Together: n.Problem.Together, NeverPartner: n.Problem.NeverPartner, NeverMeet: n.Problem.NeverMeet,
	}
	for _, i := range n.Here[n.First] {
		if n.Problem.MaxRun == 0 || books.Run[i] < n.Problem.MaxRun {
			r.Waiting = append(r.Waiting, Waiting{Player: i})
		} else {
			r.Running = append(r.Running, Game{A: Team{i, Nobody}, B: Team{Nobody, Nobody}})
		}
	}
	for _, r.Court = range n.OpenCourts(n.First) {
		if g, err := QueueNext(r); err == nil {
			round := Round{Games: []Game{g}}
			for _, i := range n.Here[n.First] {
				if !slices.Contains(g.Players(), i) {
					round.Out = append(round.Out, i)
				}
			}
			return round, true
		}
	}
	return Round{}, false
}
