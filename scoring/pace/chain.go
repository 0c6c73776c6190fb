package pace

import (
	"club/quadrille/scoring"
)

const (
	// residual is the chance of a game still going on at which it is no longer followed.
	residual = 1e-17
	// faint is the chance at which a single state is given up. Much smaller than residual over the number of
	// states, it keeps endless tails of close games from growing the chain.
	faint = 1e-24
)

// chain is the Markov chain of a game, built from the engine as far as it is needed. Its states are
// those that differ for the future of the game: score, serving team and server number. Made by the
// engine itself, it has every rule that the engine has.
type chain struct {
	chances [2]float64 // that a team wins a rally it serves
	nodes   []node
	states  []scoring.State // one engine state of each node
	index   map[spot]int32
	finals  []scoring.Score
	ended   map[scoring.Score]int32
}

// spot is what tells the states of the chain apart.
type spot struct {
	score   scoring.Score
	serving scoring.Team
	number  int
}

// node is a state of the chain. Where a rally leads is the index of a node, or for the end of a game the
// complement of the index of a final score.
type node struct {
	chance   float64 // of the serving team in the next rally
	won      int32
	lost     int32
	expanded bool
}

func newChain(start scoring.State, a, b float64) *chain {
	c := &chain{chances: [2]float64{a, b}, index: map[spot]int32{}, ended: map[scoring.Score]int32{}}
	c.node(start)
	return c
}

// node is the node of an engine state, or the complement of its final score.
func (c *chain) node(s scoring.State) int32 {
	if s.Done {
		i, known := c.ended[s.Score]
		if !known {
			i = int32(len(c.finals))
			c.ended[s.Score] = i
			c.finals = append(c.finals, s.Score)
		}
		return ^i
	}
	at := spot{s.Score, s.Serving, s.Number}
	i, known := c.index[at]
	if !known {
		i = int32(len(c.nodes))
		c.index[at] = i
		c.nodes = append(c.nodes, node{chance: c.chances[s.Serving]})
		c.states = append(c.states, s)
	}
	return i
}

// expand asks the engine where a node leads.
func (c *chain) expand(i int) {
	s := c.states[i]
	won := c.node(s.After(scoring.Rally{Won: s.Serving}))
	lost := c.node(s.After(scoring.Rally{Won: s.Serving.Other()}))
	c.nodes[i].won, c.nodes[i].lost, c.nodes[i].expanded = won, lost, true
}

// run follows the game rally by rally until it is over with all but the residual chance, and calls end
// for every chance that it ends with a final score in its n-th rally.
func (c *chain) run(end func(n int, final int32, p float64)) {
	now, next := []float64{1}, []float64(nil)
	for n, left := 1, 1.0; left > residual; n++ {
		next = append(next[:0], make([]float64, len(c.nodes))...)
		left = 0
		step := func(to int32, p float64) {
			if to < 0 {
				end(n, ^to, p)
				return
			}
			for int(to) >= len(next) {
				next = append(next, 0)
			}
			next[to] += p
			left += p
		}
		for i, p := range now {
			if p < faint {
				continue
			}
			if !c.nodes[i].expanded {
				c.expand(i)
			}
			at := c.nodes[i]
			step(at.won, p*at.chance)
			step(at.lost, p*(1-at.chance))
		}
		now, next = next, now
	}
}
