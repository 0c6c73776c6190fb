package bound

import (
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// between bounds meetings by the people common to two rounds, where everybody has the same number of games g: each of
// a round's players is in g-1 others, so what a round has in common with all others together is known. The common
// people of two rounds are spread over the pairs of their games, as in overlap.go, where they cost the least if
// spread evenly; but they cannot be spread evenly over the pairs of rounds if each round is to have its sum, and neighbours
// share just so many.
//
// The least over all ways is a flow of least cost if each pair of rounds is counted from both sides, and whatever numbers
// a plan has are such a flow. So half of the least flow, rounded up, is a bound.
func (s *Scope) between() int {
	g, ok := s.alike()
	if !ok {
		return 0
	}
	f := newSpread(len(s.games))
	for r := range s.games {
		f.left[r], f.right[r] = s.seats(r)*(g-1), s.seats(r)*(g-1)
	}
	sum := 0
	common := s.commonSeats()
	for r := range s.games {
		for q := range s.games {
			cells := s.games[r] * s.games[q]
			switch {
			case r == q || cells == 0:
			case (q == r+1 || r == q+1) && s.exact(min(q, r)):
				x := common[min(q, r)][max(q, r)]
				f.left[r] -= x
				f.right[q] -= x
				sum += measure.LeastPairs(x, cells)
			default:
				f.cells[r][q] = cells
			}
		}
	}
	return halved(sum + f.least())
}

// mostBetween is for how many units such a flow is worked out. With more the other arguments of overlap.go and chain.go
// were as good on all nights of 4 to 40 people on up to 4 courts and 3 to 16 rounds.
const mostBetween = 100

// alike tells whether everybody has one number of games, on a night from its beginning on which all are there all the
// time.
func (s *Scope) alike() (games int, ok bool) {
	if !s.n.Fresh() || len(s.games) < 3 || s.n.People == 0 {
		return 0, false
	}
	all := 0
	for r := range s.games {
		if all += s.seats(r); len(s.here[r]) != s.n.People {
			return 0, false
		}
	}
	for i := range night.Player(s.n.People) {
		if s.Low[i] != s.Low[0] || s.High[i] != s.Low[0] {
			return 0, false
		}
	}
	return s.Low[0], s.Low[0] > 0 && all*(s.Low[0]-1) <= mostBetween
}
