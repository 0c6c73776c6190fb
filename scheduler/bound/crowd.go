package bound

import (
	"club/quadrille/scheduler/measure"
)

// crowd is a set of at most so many people, with how many pairs of them at least meet and oppose in
// given rounds, counted once for each round.
//
// If E pairs meet and the set has C(u,2) pairs, then Σ max(0, m-h) over these is at least E - h·C(u,2),
// for any h ≥ 1. Σ C(m,2) is the sum of that over all h, and each h may have the crowd that suits it
// best.
type crowd struct{ people, meetings, opponents int }

// phases bounds the free rounds by crowds, apart for the first, third, fifth, … and for the others:
// C(x+y,2) ≥ C(x,2) + C(y,2). Where about half of the people sit out and nobody need be benched twice
// running, round r+2 has nearly the people of round r, so that there are crowds who meet all night.
func (s *Scope) phases(common [][]int) measure.PairSums {
	var sum measure.PairSums
	for first := range min(2, len(s.games)) {
		var phase []int
		for r := first; r < len(s.games); r += 2 {
			phase = append(phase, r)
		}
		crowds := s.crowds(phase, common)
		meetings := crowded(crowds, func(c crowd) int { return c.meetings })
		sum.Meetings += max(meetings, s.fives(phase, common))
		sum.Opponents += crowded(crowds, func(c crowd) int { return c.opponents })
	}
	return sum
}

// crowded is the bound that crowds give for what is counted of each.
func crowded(crowds []crowd, count func(crowd) int) int {
	sum := 0
	for h := 1; ; h++ {
		best := 0
		for _, c := range crowds {
			best = max(best, count(c)-h*measure.Pairs(c.people))
		}
		if best == 0 {
			return sum
		}
		sum += best
	}
}

// crowds lists two crowds for each run of the rounds: people who play in all rounds of the run, and
// all who play in any. Before the run they are as many as the people of its first round must be, and
// after it as those of its last.
func (s *Scope) crowds(rounds []int, common [][]int) []crowd {
	var found []crowd
	for a, first := range rounds {
		all, any := s.seats(first), s.seats(first)
		for b, last := range rounds[a:] {
			if b > 0 {
				shared := common[rounds[a+b-1]][last]
				all -= s.seats(rounds[a+b-1]) - shared
				any = min(s.n.People, any+s.seats(last)-shared)
			}
			core, fringe := crowd{people: max(0, all)}, crowd{people: any}
			for k, r := range rounds {
				switch {
				case k < a:
					core.play(all-s.seats(first)+common[r][first], s.games[r])
					fringe.play(common[r][first], s.games[r])
				case k > a+b:
					core.play(all-s.seats(last)+common[last][r], s.games[r])
					fringe.play(common[last][r], s.games[r])
				default:
					core.play(all, s.games[r])
					fringe.play(s.seats(r), s.games[r])
				}
			}
			found = append(found, core, fringe)
		}
	}
	return found
}

// play adds a round in which at least so many of the crowd play. The fewest pairs of them meet when
// they are spread evenly over the games. Two in a game may be partners; each of a third and a fourth
// opposes two.
func (c *crowd) play(people, games int) {
	c.meetings += measure.LeastPairs(people, games)
	c.opponents += 2 * max(0, people-2*games)
}
