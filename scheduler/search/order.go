package search

import (
	"slices"

	"club/quadrille/scheduler/lineup"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/sitout"
)

// orderRounds puts rounds that could as well be played in another order into one in which sitting out
// is fair at every moment, as far as that goes without benching anybody twice running more often: a
// night that ends early has then been fair too. Who plays with whom stays.
func orderRounds(n *night.Night, rounds []night.Round) {
	if n.Problem.MaxRun > 0 || len(rounds) < 2 {
		return
	}
	o := newOrder(n, rounds)
	twice, uneven := o.cost(rounds)
	for improved := true; improved && uneven > 0; {
		improved = false
		for r := range rounds {
			for q := range r {
				if !alike(n, q, r) {
					continue
				}
				rounds[q], rounds[r] = rounds[r], rounds[q]
				t, u := o.cost(rounds)
				if t < twice || t == twice && u < uneven {
					twice, uneven, improved = t, u, true
				} else {
					rounds[q], rounds[r] = rounds[r], rounds[q]
				}
			}
		}
	}
}

// alike tells whether two rounds to plan have the same people and the same courts.
func alike(n *night.Night, q, r int) bool {
	q, r = q+n.First, r+n.First
	return slices.Equal(n.Here[q], n.Here[r]) && slices.Equal(n.OpenCourts(q), n.OpenCourts(r))
}

// order judges the order of rounds. Whatever the order, everybody's fair share after each round is the
// same, because only rounds that are alike change places.
type order struct {
	n         *night.Night
	past      []int   // each person's sit-outs in the history
	low, high [][]int // fair sit-outs of each person after each round
	last      []int   // when each person sat out last, from 1; of the history only its last round counts
}

func newOrder(n *night.Night, rounds []night.Round) *order {
	o := &order{n: n, past: n.PastOuts(), last: make([]int, n.People)}
	books := lineup.NewRecord(n)
	for r, round := range rounds {
		books.Enter(n, n.First+r, round.Out)
		s := (&sitout.Shares{Owed: books.Owed}).Rounded()
		o.low, o.high = append(o.low, s.Low), append(o.high, s.High)
	}
	return o
}

// Cost counts how often somebody is benched twice running, and by how much people's sit-outs are off
// their fair numbers after each of the rounds.
func (o *order) cost(rounds []night.Round) (twice, uneven int) {
	outs := slices.Clone(o.past)
	clear(o.last)
	if n := o.n; n.First > 0 {
		for _, i := range n.OnlyKnown(n.Problem.History[n.First-1].Out) {
			o.last[i] = 1
		}
	}
	for r, round := range rounds {
		for _, i := range round.Out {
			twice += night.One(o.last[i] == r+1)
			o.last[i] = r + 2
			outs[i]++
		}
		for i, k := range outs {
			uneven += max(0, o.low[r][i]-k, k-o.high[r][i])
		}
	}
	return twice, uneven
}
