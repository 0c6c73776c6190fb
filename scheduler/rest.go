package scheduler

// restScore is what everybody's playing and resting costs.
func (b *board) restScore() score {
	var s score
	for i := range Player(b.n.people) {
		s.add(b.restCost(i))
	}
	return s
}

// restCost is what a person's playing and resting costs over the rounds to plan.
func (b *board) restCost(i Player) score {
	s := score{unfair: b.unfair(int32(i), 0)}
	total := b.n.p.total()
	row := b.state[int(i)*total : int(i+1)*total]
	for at := max(1, b.n.first); at < total; at++ {
		s.twice += one(row[at] == benched && row[at-1] == benched)
	}
	if k := b.n.p.MaxRun; k > 0 {
		s.broken += overrun(row, b.n.first, k)
	}
	return s
}

// unfair is the cost of so many sit-outs more than a person has. It grows with the square, so that two
// people a little off are better than one far off.
func (b *board) unfair(i int32, more int) int {
	x := b.shares.excess(i, int(b.outs[i])+more)
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
	var s score
	total := b.n.p.total()
	row := b.state[int(i)*total : int(i+1)*total]
	at := b.n.first + r
	sign := 1
	if row[at] == benched {
		sign = -1
	}
	s.unfair = b.unfair(i, sign) - b.unfair(i, 0)
	s.twice = sign * beside(row, at)
	if k := b.n.p.MaxRun; k > 0 {
		before := overrun(row, b.n.first, k)
		row[at] ^= playing ^ benched
		s.broken = overrun(row, b.n.first, k) - before
		row[at] ^= playing ^ benched
	}
	return s.weight()
}

// flip makes somebody who plays in planned round r sit out, or the other way round.
func (b *board) flip(i int32, r int) {
	at := int(i)*b.n.p.total() + b.n.first + r
	if b.state[at] == benched {
		b.outs[i]--
	} else {
		b.outs[i]++
	}
	b.state[at] ^= playing ^ benched
}

// benchedIn tells whether somebody sits out planned round r.
func (b *board) benchedIn(i int32, r int) bool {
	return b.state[int(i)*b.n.p.total()+b.n.first+r] == benched
}

// tradeDelta is the change of weight by who sits out if i, who sits out planned round r, and j, who
// sits out round q, take each other's place there. Nobody's number of sit-outs changes.
func (b *board) tradeDelta(i, j int32, r, q int) int {
	return score{twice: b.moveRest(i, r, q) + b.moveRest(j, q, r)}.weight()
}

// moveRest is how often more somebody is benched twice running who sits out planned round q instead
// of r.
func (b *board) moveRest(i int32, r, q int) int {
	total := b.n.p.total()
	row := b.state[int(i)*total : int(i+1)*total]
	r, q = r+b.n.first, q+b.n.first
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
