package design

import (
	"slices"

	"club/quadrille/scheduler/design/ring"
)

// SpouseAvoiding returns mixed doubles for couples (man i is person i, his wife person couples+i):
// spouses never share a court, every other man and woman partner once and oppose once, and people
// of the same sex oppose exactly once. Seats 0 and 2 of a table are men, 1 and 3 women.
//
// Such a schedule is a self-orthogonal Latin square L with L(i,i) = i: the games are man i and woman
// L(i,j) against man j and woman L(j,i). They exist for all numbers of couples from 4 but 6 (Brayton,
// Coppersmith & Hoffman, Bull. Amer. Math. Soc. 80 (1974) 116-118). This catalogue has them to 20
// and for all numbers whose prime powers are at least 4. The rounds are as few as can be (n-1 for
// an even number n, n for an odd one), but for 20 couples one more and for 10, 12, 14 and 18 three
// more; whether 10 couples can do with 9 rounds is not known.
//
// For 2, 3 and 6 couples the rounds are the nearest miss, and ok is false; for other numbers
// without a design rounds is nil.
func SpouseAvoiding(couples int) (rounds [][]Table, ok bool) {
	if rounds := spousesNearly(couples); rounds != nil {
		return rounds, false
	}
	if couples < 4 {
		return nil, false
	}
	if rounds, ok := spousesByRing(couples); ok {
		return rounds, true
	}
	return spousesByStarter(couples)
}

// spousesByRing uses L(i,j) = a·i + b·j, b = 1-a, over a product of fields in which a, b and a-b are
// units, as exist when every prime power of n is at least 4. The game of men i and j is played in
// the round i+j: the women there are a·i + b·j and a·j + b·i = (i+j) - (a·i + b·j), so that nobody
// plays twice. For a power of two the round 0 is empty.
func spousesByRing(n int) (rounds [][]Table, ok bool) {
	for _, q := range ring.PrimePowers(n) {
		if q < 4 {
			return nil, false
		}
	}
	r := ring.Fields(n)
	a := 0
	for r.Order(a) == 0 || r.Order(r.Sub(r.One(), a)) == 0 || r.Order(r.Sub(r.Add(a, a), r.One())) == 0 {
		a++
	}
	woman := func(i, j int) int { return n + r.Add(r.Mul(a, i), r.Mul(r.Sub(r.One(), a), j)) }
	rounds = make([][]Table, n)
	for i := range n {
		for j := i + 1; j < n; j++ {
			s := r.Add(i, j)
			rounds[s] = append(rounds[s], Table{i, woman(i, j), j, woman(j, i)})
		}
	}
	return slices.DeleteFunc(rounds, func(round []Table) bool { return len(round) == 0 }), true
}

// spousesByStarter develops a stored starter. The translates of a single game overlap, so they are
// shared out over as few further rounds as hold them.
func spousesByStarter(n int) (rounds [][]Table, ok bool) {
	s, ok := find(coupleRecipes, 2*n)
	if !ok {
		return nil, false
	}
	size := s.Group.Ring.N()
	moving := s.Group.Layers * size
	name := func(p int) int { // from the starter's numbers to men 0..n-1, women n..2n-1
		switch {
		case p == moving:
			return n - 1
		case p == moving+1:
			return 2*n - 1
		}
		return p/size*n + p%size
	}
	all := s.Rounds()
	for i := range all {
		all[i] = relabelRound(all[i], name)
	}
	rounds = all[:size]
	if single := slices.Concat(all[size:]...); len(single) > 0 {
		rounds = append(rounds, pack(single)...)
	}
	return rounds, true
}
