package bound

import (
	"slices"

	"club/quadrille/scheduler/measure"
)

// chains bounds meetings on up to three courts by the people common to games of two rounds, where all
// rounds have the same people and games, and as few as can be are benched twice running.
//
// Of the n people of a round, those who also play in round q and those who also play in round q+1 are
// together n, less those of them who sit out both and more those who play both. So the numbers
// that a round has in common with the rounds after it are a chain in which the sum of
// neighbours is known but for these few. Each chain is made as cheap as it can be by itself, with a
// discount for each person in common. The discounts are taken back for as many people as all pairs
// of rounds have in common at least. This holds for any discount.
func (s *Scope) chains(common [][]int) int {
	if !s.steady() {
		return 0
	}
	total, best := s.commonPeople(), 0
	for discount := range 4 {
		best = max(best, s.chained(common[0][1], discount)+discount*total)
	}
	return best
}

// steady tells whether chains apply. On four courts or more no two rounds have so many people in
// common that two of them must meet again.
func (s *Scope) steady() bool {
	for r := 1; r < len(s.games); r++ {
		if s.games[r] != s.games[0] || !s.exact(r-1) {
			return false
		}
	}
	return s.n.First == 0 && len(s.games) > 1 && s.games[0] > 0 && s.games[0] < 4
}

// chained is the least sum over all chains, of which one begins at each round and ends at the last.
// All begin with the same number.
func (s *Scope) chained(start, discount int) int {
	const never = 1 << 40
	seats, cells := s.seats(0), s.games[0]*s.games[0]
	least, most := seats-s.TwiceAt(1), seats+start
	cost := make([]int, seats+1) // of the chains of a length by the number that they end with
	for x := range cost {
		cost[x] = never
	}
	cost[start] = measure.LeastPairs(start, cells) - discount*start
	sum := 0
	for range len(s.games) - 1 {
		sum += slices.Min(cost)
		longer := make([]int, seats+1)
		for y := range longer {
			longer[y] = never
			for x := max(0, least-y); x <= min(seats, most-y); x++ {
				longer[y] = min(longer[y], cost[x]+measure.LeastPairs(y, cells)-discount*y)
			}
		}
		cost = longer
	}
	return sum
}
