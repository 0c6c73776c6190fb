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
	var s score
	total, planned := b.n.p.total(), len(b.shapes)
	row := b.state[int(i)*total : int(i+1)*total]
	for r := range planned {
		s.unfair += b.unfair(i, r, int(b.outs[int(i)*planned+r]))
		at := b.n.first + r
		if at > 0 && row[at] == benched && row[at-1] == benched {
			s.twice++
		}
	}
	if k := b.n.p.MaxRun; k > 0 {
		s.broken += overrun(row, b.n.first, k)
	}
	return s
}

// unfair is the cost of so many sit-outs after planned round r. What counts in the end is the whole
// night; but nights are cut short, so that each round before counts too.
func (b *board) unfair(i Player, r, outs int) int {
	x := b.shares.excess(i, r, outs)
	if r == len(b.shapes)-1 {
		return 16 * x * x
	}
	return 0 * x
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
	total, planned := b.n.p.total(), len(b.shapes)
	row := b.state[int(i)*total : int(i+1)*total]
	outs := b.outs[int(i)*planned : int(i+1)*planned]
	at := b.n.first + r
	sign := 1
	if row[at] == benched {
		sign = -1
	}
	for q := r; q < planned; q++ {
		s.unfair += b.unfair(Player(i), q, int(outs[q])+sign) - b.unfair(Player(i), q, int(outs[q]))
	}
	if at > 0 && row[at-1] == benched {
		s.twice += sign
	}
	if at+1 < total && row[at+1] == benched {
		s.twice += sign
	}
	if k := b.n.p.MaxRun; k > 0 {
		before := overrun(row, b.n.first, k)
		row[at] ^= playing ^ benched
		s.broken += overrun(row, b.n.first, k) - before
		row[at] ^= playing ^ benched
	}
	return s.weight()
}

// flip makes somebody who plays in planned round r sit out, or the other way round.
func (b *board) flip(i int32, r int) {
	total, planned := b.n.p.total(), len(b.shapes)
	at := int(i)*total + b.n.first + r
	sign := int32(1)
	if b.state[at] == benched {
		sign = -1
	}
	b.state[at] ^= playing ^ benched
	for q := r; q < planned; q++ {
		b.outs[int(i)*planned+q] += sign
	}
}

// tradeDelta is the change of weight by who sits out if i, who sits out planned round r, and j, who
// sits out round q, take each other's place there.
func (b *board) tradeDelta(i, j int32, r, q int) int {
	planned := len(b.shapes)
	oi, oj := b.outs[int(i)*planned:int(i+1)*planned], b.outs[int(j)*planned:int(j+1)*planned]
	from, to, by := r, q, 1
	if r > q {
		from, to, by = q, r, -1
	}
	d := score{twice: b.moveRest(i, r, q) + b.moveRest(j, q, r)}
	if d.twice > 0 {
		return d.weight()
	}
	for k := from; k < to; k++ {
		d.unfair += b.unfair(Player(i), k, int(oi[k])-by) - b.unfair(Player(i), k, int(oi[k]))
		d.unfair += b.unfair(Player(j), k, int(oj[k])+by) - b.unfair(Player(j), k, int(oj[k]))
	}
	return d.weight()
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
