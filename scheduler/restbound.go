package scheduler

// scopeOf describes rounds that are known, for bounds on what else they could have been: the same
// people there, as many games, sit-outs as fair.
func (n *night) scopeOf(rounds []Round, m *measures) *scope {
	s := newScope(n, n.here[n.first:], make([]int, len(rounds)))
	s.got = m.pair
	for i, mate := range n.mate { // one of two who belong together may have come later, gone earlier, or been replaced
		s.always[i] = s.always[i] && int(m.pair[i*n.people+int(mate)].p) == m.games[i]
	}
	for r, round := range rounds {
		for _, g := range round.Games {
			if g.Singles() {
				s.extra[r] += 2
			} else {
				s.games[r]++
			}
		}
	}
	if m.singles {
		copy(s.low, m.games)
		copy(s.high, m.games)
	} else {
		s.fairGames(sharesOf(n, rounds), n.pastOuts())
		s.admit(m.games)
	}
	s.rests = !m.singles && m.twice == s.twiceBound()
	return s
}

// pastOuts counts the sit-outs of the history.
func (n *night) pastOuts() []int {
	outs := make([]int, n.people)
	for _, round := range n.p.History {
		for _, i := range n.valid(round.Out) {
			outs[i]++
		}
	}
	return outs
}

// twiceBound is how often at least people are benched twice running, given what was played.
func (s *scope) twiceBound() int {
	n := s.n
	sum := 0
	for r := 1; r < n.first; r++ {
		sum += len(intersect(n.valid(n.p.History[r-1].Out), n.valid(n.p.History[r].Out)))
	}
	for r := range s.games {
		sum += s.twiceAt(r)
	}
	return sum
}

// twiceAt is how many people at least sit out free round r and the one before it: those who sat out
// and are still there, less the seats of round r. It is 0 whenever those who sit out are at most half
// of those present.
func (s *scope) twiceAt(r int) int {
	n := s.n
	before := n.first + r - 1
	if before < 0 || n.side != nil && s.extra[r]+s.extra[max(0, r-1)] > 0 {
		return 0
	}
	sum := 0
	for k, pool := range n.pools(n.first + r) {
		stay := 0
		if r == 0 {
			stay = len(intersect(pool, n.valid(n.p.History[before].Out)))
		} else {
			previous := n.pools(before)[k]
			out := len(previous) - n.seatsOf(k, s.seats(r-1)+s.extra[r-1])
			stay = out - (len(previous) - len(intersect(previous, pool)))
		}
		sum += max(0, stay-n.seatsOf(k, s.seats(r)+s.extra[r]))
	}
	return sum
}

// intersect returns the people who are in both lists.
func intersect(a, b []Player) []Player {
	in := make(map[Player]bool, len(b))
	for _, i := range b {
		in[i] = true
	}
	var both []Player
	for _, i := range a {
		if in[i] {
			both = append(both, i)
			delete(in, i)
		}
	}
	return both
}

// spreadBound is the least difference of sit-outs among those present throughout. Each class of people
// who share sit-outs has a total; what those present throughout must take of it, whatever fair numbers
// the others take, is spread at best evenly.
func (s *scope) spreadBound(m *measures) int {
	if m.singles {
		return 0
	}
	most, fewest, any := 0, 0, false
	for class := range 2 {
		low, high, always := s.mustSit(m, class)
		if always == 0 {
			continue
		}
		top, bottom := (low+always-1)/always, high/always
		if top <= bottom && bottom*always < low {
			top = bottom + 1
		}
		if !any {
			most, fewest, any = top, bottom, true
		}
		most, fewest = max(most, top), min(fewest, bottom)
	}
	return max(0, most-fewest)
}

// mustSit returns the fewest and most sit-outs that those of a class present throughout can have
// together, and how many they are.
func (s *scope) mustSit(m *measures, class int) (low, high, always int) {
	past := s.n.pastOuts()
	for i, outs := range m.outs {
		if s.class(Player(i)) != class {
			continue
		}
		low, high = low+outs, high+outs
		if m.throughout[i] {
			always++
			continue
		}
		present := s.common(Player(i), Player(i))
		low -= past[i] + present - s.low[i]
		high -= past[i] + present - s.high[i]
	}
	return low, high, always
}

// class divides people by whom they share sit-outs with: the group on mixed nights, whether the
// partner is there with set pairs; -1 if that changes during the night.
func (s *scope) class(i Player) int {
	switch {
	case s.n.side != nil:
		return s.n.side[i]
	case s.n.p.Format != Pairs || s.inseparable(i):
		return 0
	case s.n.mate[i] == Nobody || s.common(i, s.n.mate[i]) == 0:
		return 1
	}
	return -1
}

// courtBound is the least court spread: a person whose games do not divide evenly among the courts in
// use has been one time more on one than on another.
func (s *scope) courtBound(m *measures) int {
	if len(m.onCourt) == 0 || len(m.onCourt[0]) < 2 {
		return 0
	}
	courts := len(m.onCourt[0])
	sum := 0
	for _, counts := range m.onCourt {
		games := 0
		for _, c := range counts {
			games += c
		}
		if games%courts != 0 {
			sum++
		}
	}
	return sum
}
