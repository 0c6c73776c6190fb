package search

import (
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// step is one exchange of two seats of a planned round. A move is one or several steps that are taken
// together or not at all.
type step struct{ r, s, t int }

// mover proposes moves that keep fixed partners together, groups apart on mixed nights and walls
// standing.
type mover struct {
	b      *board
	d      *dice.Dice
	live   []int   // planned rounds with games
	benchy []int   // those of them with a bench
	locked []bool  // at round·people + person: the partner is fixed and there
	couple bool    // anybody is locked in any round
	free   bool    // everybody may sit everywhere
	seats  []int32 // of the games of each planned round
	// which kinds of roll are changes of places within a round, where everybody may sit everywhere; else none
	swapFrom, swapTo int8
	steps            []step
	rest             int  // what the proposed move changes by who sits out
	known            bool // rest is worked out
	// patience is by how much a move may worsen the plan and still be worth a roll of the dice
	patience int
}

func newMover(b *board, d *dice.Dice) *mover {
	m := &mover{b: b, d: d, locked: make([]bool, len(b.where)), steps: make([]step, 4+len(b.shapes))}
	for r, shape := range b.shapes {
		m.seats = append(m.seats, int32(shape.Seats()))
		if shape.Seats() > 0 {
			m.live = append(m.live, r)
			if shape.Out() > 0 {
				m.benchy = append(m.benchy, r)
			}
		}
		for _, i := range b.row(r) {
			if b.n.HasMate(night.Player(i), b.n.First+r) {
				m.locked[r*b.n.People+int(i)] = true
				m.couple = true
			}
		}
	}
	m.free = !m.couple && b.n.Side == nil && b.n.Walls == nil
	m.findSwaps()
	return m
}

// findSwaps notes for which rolls anyMove proposes changes of places within a round.
func (m *mover) findSwaps() {
	if m.swapFrom, m.swapTo = 0, 31; !m.free {
		m.swapTo = -1
		return
	}
	if len(m.benchy) > 0 {
		m.swapFrom = 13
	}
	if len(m.benchy) > 2 {
		m.swapTo = 28
	}
}

// from leaves the rounds before a planned round as they are.
func (m *mover) from(first int) {
	early := func(r int) bool { return r < first }
	m.live, m.benchy = slices.DeleteFunc(m.live, early), slices.DeleteFunc(m.benchy, early)
	m.findSwaps()
}

// propose returns the steps of a random move, none if the roll came to nothing or what is held would move.
func (m *mover) propose(x uint64) []step {
	steps := m.anyMove(x)
	if m.b.held != nil && !m.b.holds(steps) {
		return nil
	}
	return steps
}

// anyMove returns the steps of a random move, none if the roll came to nothing.
func (m *mover) anyMove(x uint64) []step {
	kind := int(x >> 59)
	switch {
	case len(m.benchy) > 2 && m.b.n.Walls == nil && (kind == 31 || kind > 28 && m.b.priced):
		return m.crossover()
	case len(m.benchy) > 1 && kind < 8:
		return m.exchange(x)
	case len(m.benchy) > 0 && kind < 13:
		return m.substitute(x)
	case m.couple && (kind < 22 || m.b.n.Problem.Format == night.Pairs):
		return m.swapTeams()
	}
	return m.swapSeats(x)
}

// isLocked tells whether the occupant of a seat must stay with the partner.
func (m *mover) isLocked(r, s int) bool {
	return m.couple && m.locked[r*m.b.n.People+int(m.b.row(r)[s])]
}

// mayMove tells whether the occupant of seat s of round r may play on seat t: the court is no wall,
// and the group is right.
func (m *mover) mayMove(r, s, t int) bool {
	n := m.b.n
	i := night.Player(m.b.row(r)[s])
	if t >= m.b.shapes[r].Seats() {
		return true
	}
	if n.Side != nil && n.Side[i] != t&1 {
		return false
	}
	return n.MayPlayOn(i, m.b.shapes[r].Courts[t>>2])
}

// onlySwaps tells whether a roll stands for a change of places within a round that nothing forbids.
func (m *mover) onlySwaps(x uint64) bool {
	kind := int8(x >> 59)
	return kind >= m.swapFrom && kind <= m.swapTo && m.b.held == nil
}

// roll draws a round and two seats of its games. The low 48 bits of x are rolls enough: the search proposes little else.
func (m *mover) roll(x uint64) (r, s, t int) {
	r = m.live[part(x, len(m.live))]
	seats := int(m.seats[r])
	return r, part(x>>16, seats), part(x>>32, seats)
}

// swapSeats proposes that two people who play in one round change places.
func (m *mover) swapSeats(x uint64) []step {
	r, s, t := m.roll(x)
	if s>>1 == t>>1 {
		return nil
	}
	if !m.free && (m.isLocked(r, s) || m.isLocked(r, t) || !m.mayMove(r, s, t) || !m.mayMove(r, t, s)) {
		return nil
	}
	m.steps[0] = step{r, s, t}
	return m.steps[:1]
}

// part turns the low 16 bits of a roll into a number from 0 to k-1.
func part(x uint64, k int) int { return int(x & 0xffff * uint64(k) >> 16) }

// swapTeams proposes that two teams of different games change places.
func (m *mover) swapTeams() []step {
	r := m.live[m.d.Roll(len(m.live))]
	seats := m.b.shapes[r].Seats()
	s, t := m.d.Roll(seats)&^1, m.d.Roll(seats)&^1
	if s>>2 == t>>2 {
		return nil
	}
	for k := range 2 {
		if !m.mayMove(r, s+k, t+k) || !m.mayMove(r, t+k, s+k) {
			return nil
		}
		m.steps[k] = step{r, s + k, t + k}
	}
	return m.steps[:2]
}

// substitute proposes that somebody on the bench plays in somebody's stead; a couple replaces a team.
func (m *mover) substitute(x uint64) []step {
	r := m.benchy[part(x, len(m.benchy))]
	seats := m.b.shapes[r].Seats()
	s := part(x>>16, seats)
	t := seats + part(x>>32, m.b.shapes[r].Out())
	if m.known = !m.couple; m.known {
		row := m.b.row(r)
		m.rest = m.b.benchDelta(row[s], r) + m.b.benchDelta(row[t], r)
		if m.rest > m.patience {
			return nil
		}
	}
	return m.replace(r, s, t, 0)
}

// replace writes the steps by which bench seat t takes over seat s of round r, from step k on, and
// returns all steps so far; none if that is not possible.
func (m *mover) replace(r, s, t, k int) []step {
	b := m.b
	if !m.isLocked(r, s) && !m.isLocked(r, t) {
		if !m.mayMove(r, t, s) {
			return nil
		}
		m.steps[k] = step{r, s, t}
		return m.steps[:k+1]
	}
	if b.n.Problem.Format == night.Pairs && !m.isLocked(r, t) {
		return nil
	}
	u := m.companion(r, t)
	if u < 0 || u < b.shapes[r].Seats() || m.isLocked(r, s) != m.isLocked(r, s^1) || m.isLocked(r, t) != m.isLocked(r, u) {
		return nil
	}
	if !m.mayMove(r, t, s) {
		t, u = u, t
	}
	if !m.mayMove(r, t, s) || !m.mayMove(r, u, s^1) {
		return nil
	}
	m.steps[k], m.steps[k+1] = step{r, s, t}, step{r, s ^ 1, u}
	return m.steps[:k+2]
}

// companion returns the seat of the fixed partner of the person on bench seat t, or another bench
// seat by lot for somebody without; -1 if there is none.
func (m *mover) companion(r, t int) int {
	b := m.b
	i := night.Player(b.row(r)[t])
	if m.isLocked(r, t) {
		return int(b.where[r*b.n.People+int(b.n.Mate[i])])
	}
	if b.shapes[r].Out() < 2 {
		return -1
	}
	u := b.shapes[r].Seats() + m.d.Roll(b.shapes[r].Out())
	if u == t {
		return -1
	}
	return u
}

// exchange proposes that two people trade roles in two rounds: in one the first plays and the second
// sits out, in the other it is the other way round. Everybody's number of sit-outs stays.
func (m *mover) exchange(x uint64) []step {
	b := m.b
	r := m.benchy[part(x, len(m.benchy))]
	q := m.benchy[part(x>>16, len(m.benchy))]
	if r == q {
		return nil
	}
	t := b.shapes[r].Seats() + part(x>>32, b.shapes[r].Out())
	u := b.shapes[q].Seats() + part(x>>43, b.shapes[q].Out()) // only its lowest bits are also among those of t
	i, j := int(b.row(r)[t]), int(b.row(q)[u])
	s, v := int(b.where[r*b.n.People+j]), int(b.where[q*b.n.People+i])
	if i == j || s < 0 || v < 0 || s >= b.shapes[r].Seats() || v >= b.shapes[q].Seats() {
		return nil
	}
	if !m.couple && b.n.Problem.MaxRun == 0 {
		m.known = true
		if m.rest = b.tradeDelta(int32(i), int32(j), r, q); m.rest > m.patience {
			return nil
		}
	}
	first := m.replace(r, s, t, 0)
	if first == nil {
		return nil
	}
	return m.replace(q, v, u, len(first))
}

// crossover proposes that two people trade their whole parts in a stretch of rounds: where one played
// or sat out, the other does. Who sits out twice running changes at the ends of the stretch only.
func (m *mover) crossover() []step {
	b := m.b
	from := m.benchy[m.d.Roll(len(m.benchy))]
	length := 2 + m.d.Roll(4)
	if b.priced {
		length = 2 + m.d.Roll(len(b.shapes)) // from here to the end, two people change over with one rest twice running
	}
	i, j := m.d.Roll(b.n.People), m.d.Roll(b.n.People)
	if i == j || b.n.Side != nil && b.n.Side[i] != b.n.Side[j] {
		return nil
	}
	if m.couple && m.d.Roll(4) == 0 {
		from, length = 0, len(b.shapes) // all night: who is with whom must part from whom sits out when
	}
	k, even := 0, 0
	for r := from; r < min(from+length, len(b.shapes)); r++ {
		s, t := int(b.where[r*b.n.People+i]), int(b.where[r*b.n.People+j])
		if s < 0 || t < 0 {
			return nil
		}
		if m.couple && (m.locked[r*b.n.People+i] || m.locked[r*b.n.People+j]) {
			return nil
		}
		seats := b.shapes[r].Seats()
		even += night.One(s < seats) - night.One(t < seats)
		if s>>1 == t>>1 || s >= seats && t >= seats {
			continue
		}
		m.steps[k] = step{r, s, t}
		k++
	}
	if even != 0 && length < len(b.shapes) || k < 2 {
		return nil
	}
	return m.steps[:k]
}
