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
	Levels  measure.Levels
	Scope   *bound.Scope
	Least   measure.PairSums // what who plays with whom costs at least

	evenness, spread measure.Value // of sit-outs, which are worked out together
}

// Rotation makes a case of the rounds of a night, of which nothing was played before as the bounds see it.
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
	var games []night.Game
	for _, r := range c.Rounds {
		games = append(games, r.Games...)
	}
	c.Levels = measure.LevelsOf(n.Problem, games)
	c.Least = c.Scope.Bounds()
	if !c.Scope.Loose {
		c.evenness, c.spread = c.Scope.Sitouts(c.Rounds, c.Counted)
	}
	return c
}

// Certificate judges the case by every measure, with games of no round but for sitting out.
func (c *Case) Certificate() Certificate { return c.certificate(Kinds()) }

func (c *Case) certificate(kinds []Kind) Certificate {
	out := Certificate{Levels: c.Levels}
	for _, k := range kinds {
		if k.Rests && c.Scope.Loose || k.Levels && c.Levels.Games == 0 {
			continue
		}
		*k.At(&out) = k.Judge(c)
	}
	return out
}

// bounded is a value beside a bound, if one is known.
func bounded(value int, least func() (int, bool)) Value {
	if low, known := least(); known {
		return Value{Value: value, Bound: low}
	}
	return Value{Value: value, Open: true}
}
