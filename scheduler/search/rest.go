package search

import (
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// restScore is what everybody's playing and resting costs beyond the fairest sit-outs.
func (b *board) restScore() measure.Score {
	var s measure.Score
	for i := range night.Player(b.n.People) {
		s.Add(b.restCost(i))
	}
	s[measure.Unfair] -= b.fair.Least
	for _, e := range b.atOnce {
		s[measure.TwiceAtOnce] += measure.Pairs(int(e))
	}
	return s
}

// restCost is what a person's playing and resting costs over the rounds to plan.
func (b *board) restCost(i night.Player) (s measure.Score) {
	s[measure.Unfair] = b.fair.Steps(int32(i), int(b.outs[i]))
	row := b.rowOf(int32(i))
	for at := max(1, b.n.First); at < len(row); at++ {
		if row[at] == benched && row[at-1] == benched {
			s[measure.Twice]++
			s[measure.Thrice] += night.One(at > 1 && row[at-2] == benched)
		}
	}
	s[measure.TwiceMore] = max(0, int(b.twice[i])-b.may)
	if k := b.n.Problem.MaxRun; k > 0 {
		s[measure.Broken] += overrun(row, b.n.First, k)
	}
	return s
}

// rowOf is what somebody does in each round of the night.
func (b *board) rowOf(i int32) []uint8 {
	total := b.n.Problem.TotalRounds()
	return b.state[int(i)*total : int(i+1)*total]
}

// countTwice counts how often each person, and in each round how many, sit out right after a sit-out.
func (b *board) countTwice() {
	b.twice, b.atOnce = make([]int32, b.n.People), make([]int32, b.n.Problem.TotalRounds())
	for i := range int32(b.n.People) {
		row := b.rowOf(i)
		for at := 1; at < len(row); at++ {
			if row[at] == benched && row[at-1] == benched {
				b.twice[i]++
				b.atOnce[at]++
			}
		}
	}
}

// mayTwice is how often somebody may sit out twice running where that has a price: once, or as often as everybody
// must where more people sit out than play.
func mayTwice(n *night.Night, shapes []night.Shape) int {
	must := 0
	for r := range shapes {
		if at := n.First + r; at > 0 && r > 0 {
			must += max(0, shapes[r-1].Out()-shapes[r].Seats())
		}
	}
	return max(1, (must+n.People-1)/max(1, n.People))
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
	row, at, sign := b.rowOf(i), b.n.First+r, 1
	if row[at] == benched {
		sign = -1
	}
	outs := int(b.outs[i])
	d := b.w[measure.Unfair] * (b.fair.Steps(i, outs+sign) - b.fair.Steps(i, outs))
	running := beside(row, at)
	d += b.w[measure.Twice] * sign * running
	if b.priced && running > 0 {
		d += b.pricedDelta(i, row, at, sign, running)
	}
	if k := b.n.Problem.MaxRun; k > 0 {
		before := overrun(row, b.n.First, k)
		row[at] ^= playing ^ benched
		d += b.w[measure.Broken] * (overrun(row, b.n.First, k) - before)
		row[at] ^= playing ^ benched
	}
	return d
}

// pricedDelta is what [board.benchDelta] adds where sitting out twice running has a price: for three running,
// for more than a person may, and for many at once.
func (b *board) pricedDelta(i int32, row []uint8, at, sign, running int) int {
	d := b.w[measure.Thrice]*sign*thrice(row, at) + b.tooOften(i, sign*running)
	if at > 0 && row[at-1] == benched {
		d += b.w[measure.TwiceAtOnce] * onceMore(b.atOnce[at], sign)
	}
	if at+1 < len(row) && row[at+1] == benched {
		d += b.w[measure.TwiceAtOnce] * onceMore(b.atOnce[at+1], sign)
	}
	return d
}

// onceMore is the change of C(e,2) when e grows by one or falls by one.
func onceMore(e int32, sign int) int {
	if sign > 0 {
		return int(e)
	}
	return 1 - int(e)
}

// tooOften is the change of weight when somebody sits out twice running so many times more.
func (b *board) tooOften(i int32, more int) int {
	now := int(b.twice[i])
	return b.w[measure.TwiceMore] * (max(0, now+more-b.may) - max(0, now-b.may))
}

// flip makes somebody who plays in planned round r sit out, or the other way round.
func (b *board) flip(i int32, r int) {
	row, at, by := b.rowOf(i), b.n.First+r, int32(1)
	if row[at] == benched {
		by = -1
	}
	b.outs[i] += by
	if at > 0 && row[at-1] == benched {
		b.twice[i] += by
		b.atOnce[at] += by
	}
	if at+1 < len(row) && row[at+1] == benched {
		b.twice[i] += by
		b.atOnce[at+1] += by
	}
	row[at] ^= playing ^ benched
}

// benchedIn tells whether somebody sits out planned round r.
func (b *board) benchedIn(i int32, r int) bool {
	return b.state[int(i)*b.n.Problem.TotalRounds()+b.n.First+r] == benched
}

// tradeDelta is the change of weight by who sits out if i, who sits out planned round r, and j, who
// sits out round q, take each other's place there, but for how many sit out twice running at once. Nobody's
// number of sit-outs changes.
func (b *board) tradeDelta(i, j int32, r, q int) int {
	return b.moveRest(i, r, q) + b.moveRest(j, q, r)
}

// moveRest is the change of weight if somebody sits out planned round q instead of r.
func (b *board) moveRest(i int32, r, q int) int {
	row := b.rowOf(i)
	r, q = r+b.n.First, q+b.n.First
	two, three := -beside(row, r), 0
	if b.priced {
		three = -thrice(row, r)
	}
	row[r] = playing
	two += beside(row, q)
	if b.priced {
		three += thrice(row, q)
	}
	row[r] = benched
	d := b.w[measure.Twice] * two
	if b.priced {
		d += b.w[measure.Thrice]*three + b.tooOften(i, two)
	}
	return d
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

// thrice counts the runs of three sit-outs of which a round is one, or would be.
func thrice(row []uint8, r int) int {
	is := func(at int) bool { return at >= 0 && at < len(row) && row[at] == benched }
	return night.One(is(r-2) && is(r-1)) + night.One(is(r-1) && is(r+1)) + night.One(is(r+1) && is(r+2))
}
