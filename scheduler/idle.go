package scheduler

import (
	"context"
	"math"
	"slices"
	"strings"

	"club/quadrille/scheduler/night"
)

// Idle is a round in which open courts had no game.
type Idle struct {
	Round  int     // of the night, from 0
	Courts []Court // open and without a game, in ascending order
	More   int     // further games that the people there could have played; 0 when there were too few
}

// IdleCourts finds the open courts without a game in the rounds that follow the problem's history, and how
// many more games there could have been. A certificate compares rotations with as many games only, so that
// "no rotation can be fairer" is half the truth where more games were possible. More is never too high: a
// round with so many games was found, within everything that is asked. Where people ask much of each other
// it may be too low. The rounds must pass [Audit].
func IdleCourts(p Problem, rounds []Round) []Idle {
	var found []Idle
	played := slices.Concat(p.History, rounds)
	known := map[string]int{} // games of one round, by who and which courts are there
	for r := len(p.History); r < len(played); r++ {
		idle := Idle{Round: r, Courts: idleCourts(p, played[r], r)}
		if len(idle.Courts) == 0 {
			continue
		}
		q := onlyRound(p, played[:r])
		n := night.New(&q)
		if games := len(played[r].Games); n.MostGames(n.First, len(n.OpenCourts(n.First))) > games {
			idle.More = max(0, gamesOfOne(q, known)-games)
		}
		found = append(found, idle)
	}
	return found
}

func idleCourts(p Problem, round Round, r int) []Court {
	var idle []Court
	for c, spec := range p.Courts {
		if spec.OpenIn(r) && !round.Uses(Court(c)) {
			idle = append(idle, Court(c))
		}
	}
	return idle
}

// onlyRound is the problem of the one round after those played, without what its number of games does not
// depend on: of the history the last rounds are enough, which say who needs a rest.
func onlyRound(p Problem, played []Round) Problem {
	drop := len(played) - min(len(played), p.MaxRun)
	p.History, p.Met, p.Rounds = played[drop:], nil, 1
	p.People, p.Courts = slices.Clone(p.People), slices.Clone(p.Courts)
	for i := range p.People {
		p.People[i].Arrive, p.People[i].Leave = since(drop, p.People[i].Arrive, p.People[i].Leave)
	}
	for c := range p.Courts {
		p.Courts[c].Open, p.Courts[c].Close = since(drop, p.Courts[c].Open, p.Courts[c].Close)
	}
	return p
}

// since counts the first and the end of some rounds, 0 for none, from a later round on.
func since(round, first, end int) (int, int) {
	switch {
	case end == 0:
		return max(0, first-round), 0
	case end <= round:
		return math.MaxInt32, 0 // over: it does not come again
	}
	return max(0, first-round), end - round
}

// gamesOfOne is how many doubles games a plan of the problem's one round has. Who should be partners some
// day says nothing of this round, and a ladder fills courts as any night does. Where nobody needs a rest,
// rounds with the same people and courts have as many games.
func gamesOfOne(p Problem, known map[string]int) int {
	there := whatIsThere(p)
	if games, ok := known[there]; ok && p.MaxRun == 0 {
		return games
	}
	if p.Format == Ladder {
		p.Format = Rotating
	}
	p.LeftoverSingles = false
	p.Together = slices.DeleteFunc(slices.Clone(p.Together), func(t Pair) bool { return t.Times > 0 })
	games := 0
	if rounds, err := Plan(context.Background(), p, Budget{Moves: 1}); err == nil && len(rounds) > 0 {
		games = len(rounds[0].Games)
	}
	known[there] = games
	return games
}

// whatIsThere has a byte for each person and each court of a problem's first round.
func whatIsThere(p Problem) string {
	var out strings.Builder
	mark := func(there bool) {
		if there {
			out.WriteByte('+')
		} else {
			out.WriteByte('-')
		}
	}
	for _, person := range p.People {
		mark(person.PresentIn(len(p.History)))
	}
	for _, court := range p.Courts {
		mark(court.OpenIn(len(p.History)))
	}
	return out.String()
}
