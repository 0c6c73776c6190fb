package judge

import (
	"club/quadrille/scheduler/bound"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// Case is a night to be judged: what was counted of it, and the scope in which its bounds hold.
type Case struct {
	Rounds  []night.Round
	Counted *measure.Counts
	Levels  measure.Levels // of the whole night
	Scope   *bound.Scope
	Least   measure.PairSums // what who plays with whom costs at least

	all              []night.Game        // of the night
	remembered       map[night.Pair]bool // who were partners on the last night
	past             measure.Levels      // of the rounds that are fixed
	evenness, spread measure.Value       // of sit-outs, which are worked out together
}

// Rotation makes a case of the rounds of a night. What was played before them, in the history of the night's problem,
// counts in the values and is as it is in the bounds.
func Rotation(n *night.Night, rounds []night.Round) *Case {
	c := &Case{Rounds: rounds, Counted: measure.Count(n, rounds)}
	c.Scope = bound.ScopeOf(n, rounds, c.Counted)
	return c.settle(n)
}

// Games makes a case of games that belong to no round: everybody has as many as they have, and may meet everybody.
func Games(n *night.Night, rounds []night.Round) *Case {
	c := &Case{Rounds: rounds, Counted: measure.Count(n, rounds)}
	c.Scope = bound.ScopeOf(n, rounds, c.Counted)
	copy(c.Scope.Low, c.Counted.Games)
	copy(c.Scope.High, c.Counted.Games)
	c.Scope.Rests, c.Scope.Loose = false, true
	return c.settle(n)
}

func (c *Case) settle(n *night.Night) *Case {
	past := gamesOf(n.Problem.History)
	c.past = measure.LevelsOf(n.Problem, past)
	c.all = append(past, gamesOf(c.Rounds)...)
	c.Levels = measure.LevelsOf(n.Problem, c.all)
	c.Least = c.Scope.Bounds()
	c.remembered = remembered(n.Problem)
	if !c.Scope.Loose {
		c.evenness, c.spread = c.Scope.Sitouts(c.Rounds, c.Counted)
	}
	return c
}

func gamesOf(rounds []night.Round) (games []night.Game) {
	for _, r := range rounds {
		games = append(games, r.Games...)
	}
	return games
}

// Certificate judges the case by every measure, with games of no round but for sitting out.
func (c *Case) Certificate() Certificate { return c.certificate(Kinds()) }

func (c *Case) certificate(kinds []Kind) Certificate {
	out := Certificate{Levels: c.Levels, Remembered: len(c.remembered)}
	for _, k := range kinds {
		if k.Rests && c.Scope.Loose || k.Levels && c.Levels.Games == 0 || k.Before && len(c.remembered) == 0 {
			continue
		}
		*k.At(&out) = k.Judge(c)
	}
	return out
}

// bounded is a value beside a bound, if one is known: what fixed rounds have and what the others have at least.
func bounded(value, past int, least func() (int, bool)) Value {
	if low, known := least(); known {
		return Value{Value: value, Bound: past + low}
	}
	return Value{Value: value, Open: true}
}
