package bound

import (
	"slices"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// overlap bounds meetings and opponents of different rounds, not both fixed, by the people who are
// common to games of two of them.
//
// The pairs of games of two rounds are the cells among which the common people of the rounds are
// spread. Fixed rounds are taken as they were.
func (s *Scope) overlap(common [][]int) measure.PairSums {
	groups := s.cellGroups(common)
	least, all := 0, 0
	for _, g := range groups {
		least += g.low
		all += g.cells
	}
	total := max(least, s.commonPeople())
	return measure.PairSums{
		Meetings:  spreadCells(groups, total-least),
		Opponents: max(0, total-2*all),
	}
}

// cellGroup is the pairs of games of two rounds, with how many people the rounds have in common at
// least, or exactly.
type cellGroup struct {
	cells, low int
	exact      bool
}

// cellGroups lists all pairs of rounds that are not both fixed.
func (s *Scope) cellGroups(common [][]int) []cellGroup {
	var groups []cellGroup
	for r := range s.games {
		for q := range r {
			groups = append(groups, cellGroup{s.games[q] * s.games[r], common[q][r], r == q+1 && s.exact(q)})
		}
		for q := range s.n.First {
			groups = append(groups, cellGroup{s.doubles(q) * s.games[r], s.commonWithPast(q, r), false})
		}
	}
	return groups
}

// spreadCells is the least Σ C(x,2) over the cells when each group holds at least its low number of
// people and so many more are spread over the groups whose number is not exact. A cell holds four at
// most.
func spreadCells(groups []cellGroup, beyond int) int {
	sum := 0
	var room [5]int // how many more people fit at each height
	for _, g := range groups {
		if g.cells == 0 {
			continue
		}
		sum += measure.LeastPairs(g.low, g.cells)
		if g.exact {
			continue
		}
		q, s := g.low/g.cells, g.low%g.cells
		for h := q; h < 4; h++ {
			room[h] += g.cells
		}
		if q < 4 {
			room[q] -= s
		}
	}
	for h := 0; h < 4 && beyond > 0; h++ {
		take := min(beyond, room[h])
		sum += take * h
		beyond -= take
	}
	return sum
}

// doubles is the number of doubles games of fixed round q.
func (s *Scope) doubles(q int) int {
	count := 0
	for _, g := range s.n.Problem.History[q].Games {
		if !g.Singles() {
			count++
		}
	}
	return count
}

// commonPeople is the least number of people, counted once for each pair of rounds that are not both
// fixed, who play in both.
func (s *Scope) commonPeople() int {
	curves := make([]curve, s.n.People)
	for i := range curves {
		then := s.then[i]
		low, high := s.Low[i], s.High[i]
		curves[i].base = measure.Pairs(then+low) - measure.Pairs(then)
		for g := low; g < high; g++ {
			curves[i].steps = append(curves[i].steps, then+g)
		}
	}
	return s.share(curves)
}

// commonWithPast is how many people at least play both in fixed round q and in free round r.
func (s *Scope) commonWithPast(q, r int) int {
	played := make([]bool, s.n.People)
	seats := 0
	for _, g := range s.n.Problem.History[q].Games {
		for _, i := range g.Players() {
			if !g.Singles() && s.n.Known(i) {
				played[i] = true
				seats++
			}
		}
	}
	others := len(s.here[r])
	for _, i := range s.here[r] {
		if played[i] {
			others--
		}
	}
	return max(0, s.seats(r)-others)
}

// commonSeats is how many people at least play in both of two free rounds, at [earlier][later]; for
// neighbouring rounds that are exact, just how many. Rounds that share people with a third share
// some with each other; so do rounds that share few with a third between them, for want of others.
func (s *Scope) commonSeats() [][]int {
	rounds := len(s.games)
	common := make([][]int, rounds)
	for q := range common {
		common[q] = make([]int, rounds)
		common[q][q] = s.seats(q)
	}
	for distance := 1; distance < rounds; distance++ {
		for q := range rounds - distance {
			r := q + distance
			union := s.union(q, r)
			common[q][r] = max(0, s.seats(q)+s.seats(r)-union)
			switch {
			case r == q+1 && s.exact(q):
				common[q][r] = s.seats(q) + s.seats(r) - union + s.TwiceAt(r)
			case r == q+2 && s.exact(q) && s.exact(q+1):
				between := s.seats(q) + s.seats(r) - common[q][q+1] - common[q+1][r] - (union - s.seats(q+1))
				common[q][r] = max(common[q][r], between)
			}
		}
	}
	if s.Rests {
		closeOver(common)
	}
	return common
}

// closeOver raises each entry to what two rounds must share because of what both share with a third,
// of which the diagonal holds the seats.
func closeOver(common [][]int) {
	for k := range common {
		for q := range common {
			for r := q + 1; r < len(common); r++ {
				through := common[min(q, k)][max(q, k)] + common[min(k, r)][max(k, r)] - common[k][k]
				common[q][r] = max(common[q][r], through)
			}
		}
	}
}

// exact tells whether free rounds q and q+1 have a known number of people in common: the same people
// are there, and as few as possible sit out both.
func (s *Scope) exact(q int) bool {
	return s.Rests && slices.Equal(s.here[q], s.here[q+1])
}

// union is how many people are there in either of two free rounds.
func (s *Scope) union(q, r int) int {
	count := 0
	for _, i := range s.n.Everybody() {
		if s.isHere(i, q) || s.isHere(i, r) {
			count++
		}
	}
	return count
}

func (s *Scope) isHere(i night.Player, r int) bool { return s.when[i][r/64]>>(r%64)&1 == 1 }
