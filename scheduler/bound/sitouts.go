package bound

import (
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/sitout"
)

// ScopeOf describes rounds that are known, for bounds on what else they could have been: the same
// people there, as many games, sit-outs as fair.
func ScopeOf(n *night.Night, rounds []night.Round, m *measure.Counts) *Scope {
	s := NewScope(n, n.Here[n.First:], make([]int, len(rounds)))
	s.got = m.Pair
	for i, mate := range n.Mate { // one of two who belong together may have come later, gone earlier, or been replaced
		s.always[i] = s.always[i] && int(m.Pair[i*n.People+int(mate)].P)-int(s.past[i*n.People+int(mate)].P) == m.Games[i]
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
	if m.Singles {
		copy(s.Low, m.Games)
		copy(s.High, m.Games)
	} else {
		s.FairGames(sitout.SharesOf(n, rounds), n.PastOuts())
		s.admit(m.Games)
	}
	s.Rests = !m.Singles && m.Twice == s.TwiceBound()
	return s
}

// TwiceBound is how often at least people are benched twice running, given what was played.
func (s *Scope) TwiceBound() int {
	n := s.n
	sum := 0
	for r := 1; r < n.First; r++ {
		sum += len(night.Intersect(n.OnlyKnown(n.Problem.History[r-1].Out), n.OnlyKnown(n.Problem.History[r].Out)))
	}
	for r := range s.games {
		sum += s.TwiceAt(r)
	}
	return sum
}

// TwiceAt is how many people at least sit out free round r and the one before it: those who sat out
// and are still there, less the seats of round r. It is 0 whenever those who sit out are at most half
// of those present.
func (s *Scope) TwiceAt(r int) int {
	n := s.n
	before := n.First + r - 1
	if before < 0 || n.Side != nil && s.extra[r]+s.extra[max(0, r-1)] > 0 {
		return 0
	}
	sum := 0
	for k, pool := range n.Pools(n.First + r) {
		stay := 0
		if r == 0 {
			stay = len(night.Intersect(pool, n.OnlyKnown(n.Problem.History[before].Out)))
		} else {
			previous := n.Pools(before)[k]
			out := len(previous) - n.SeatsOf(k, s.seats(r-1)+s.extra[r-1])
			stay = out - (len(previous) - len(night.Intersect(previous, pool)))
		}
		sum += max(0, stay-n.SeatsOf(k, s.seats(r)+s.extra[r]))
	}
	return sum
}

// spreadBound is the least difference of sit-outs among those present throughout. Each class of people
// who share sit-outs has a total; what those present throughout must take of it, whatever fair numbers
// the others take, is spread at best evenly.
func (s *Scope) spreadBound(m *measure.Counts) int {
	if m.Singles {
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
func (s *Scope) mustSit(m *measure.Counts, class int) (low, high, always int) {
	past := s.n.PastOuts()
	for i, outs := range m.Outs {
		if s.class(night.Player(i)) != class {
			continue
		}
		low, high = low+outs, high+outs
		if m.Throughout[i] {
			always++
			continue
		}
		present := s.common(night.Player(i), night.Player(i))
		low -= past[i] + present - s.Low[i]
		high -= past[i] + present - s.High[i]
	}
	return low, high, always
}

// class divides people by whom they share sit-outs with: the group on mixed nights, whether the
// partner is there with set pairs; -1 if that changes during the night.
func (s *Scope) class(i night.Player) int {
	switch {
	case s.n.Side != nil:
		return s.n.Side[i]
	case s.n.Problem.Format != night.Pairs || s.inseparable(i):
		return 0
	case s.n.Mate[i] == night.Nobody || s.common(i, s.n.Mate[i]) == 0:
		return 1
	}
	return -1
}
