package search

import (
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// restScore is what everybody's playing and resting costs.
func (b *board) restScore() measure.Score {
	var s measure.Score
	for i := range night.Player(b.n.People) {
		s.Add(b.restCost(i))
	}
	return s
}

// restCost is what a person's playing and resting costs over the rounds to plan.
func (b *board) restCost(i night.Player) measure.Score {
	s := measure.Score{Unfair: b.unfair(int32(i), 0)}
	total := b.n.Problem.TotalRounds()
	row := b.state[int(i)*total : int(i+1)*total]
	for at := max(1, b.n.First); at < total; at++ {
		s.Twice += night.One(row[at] == benched && row[at-1] == benched)
	}
	if k := b.n.Problem.MaxRun; k > 0 {
		s.Broken += overrun(row, b.n.First, k)
	}
	return s
}

// unfair is the cost of so many sit-outs more than a person has. It grows with the square, so that two
// people a little off are better than one far off.
func (b *board) unfair(i int32, more int) int {
	x := b.shares.Excess(i, int(b.outs[i])+more)
	return x * x
}

// overrun counts the rounds from first on in which somebody plays more than k running.
func overrun(row []uint8, first, k int) int {
	over, run := 0, 0
	for r, s := range row {
		if s != playing {
			run = 0
			continue
		}
		if run++; run > k && r >= first {
			over++
		}
	}
	return over
}

// benchDelta is the change of weight when somebody who plays in planned round r sits out instead, or
// the other way round.
func (b *board) benchDelta(i int32, r int) int {
	var s measure.Score
	total := b.n.Problem.TotalRounds()
	row := b.state[int(i)*total : int(i+1)*total]
	at := b.n.First + r
	sign := 1
	if row[at] == benched {
		sign = -1
	}
	s.Unfair = b.unfair(i, sign) - b.unfair(i, 0)
	s.Twice = sign * beside(row, at)
	if k := b.n.Problem.MaxRun; k > 0 {
		before := overrun(row, b.n.First, k)
		row[at] ^= playing ^ benched
		s.Broken = overrun(row, b.n.First, k) - before
		row[at] ^= playing ^ benched
	}
	return s.Weight()
}

// flip makes somebody who plays in planned round r sit out, or the other way round.
func (b *board) flip(i int32, r int) {
	at := int(i)*b.n.Problem.TotalRounds() + b.n.First + r
	if b.state[at] == benched {
		b.outs[i]--
	} else {
		b.outs[i]++
	}
	b.state[at] ^= playing ^ benched
}

// benchedIn tells whether somebody sits out planned round r.
func (b *board) benchedIn(i int32, r int) bool {
	return b.state[int(i)*b.n.Problem.TotalRounds()+b.n.First+r] == benched
}

// tradeDelta is the change of weight by who sits out if i, who sits out planned round r, and j, who
// sits out round q, take each other's place there. Nobody's number of sit-outs changes.
func (b *board) tradeDelta(i, j int32, r, q int) int {
	return measure.Score{Twice: b.moveRest(i, r, q) + b.moveRest(j, q, r)}.Weight()
}

// moveRest is how often more somebody is benched twice running who sits out planned round q instead
// of r.
func (b *board) moveRest(i int32, r, q int) int {
	total := b.n.Problem.TotalRounds()
	row := b.state[int(i)*total : int(i+1)*total]
	r, q = r+b.n.First, q+b.n.First
	before := beside(row, r)
	row[r] = playing
	after := beside(row, q)
	row[r] = benched
	return after - before
}

// beside counts the rests right before and after a round.
func beside(row []uint8, r int) int {
	count := 0
	if r > 0 && row[r-1] == benched {
		count++
	}
	if r+1 < len(row) && row[r+1] == benched {
		count++
	}
	return count
}
