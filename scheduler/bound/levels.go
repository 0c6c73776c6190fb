package bound

import (
	"slices"

	"club/quadrille/scheduler/night"
)

// Bounds on how even games can be. Levels are whole tenths. The arguments:
//
//   - Whoever plays, plays in a game. The least gap of any game that somebody of a level can be in, with any three
//     of the others, is a matter of levels alone; likewise how far apart its four are at least. Of a game each of
//     its four players bears a quarter: games are shared out where that makes least.
//   - The levels of the two teams differ by an odd number if and only if the four add up to one. So where everybody
//     there plays, the gaps of a round add up to as odd a number as their levels; and so do those of the night where
//     everybody's number of games is known.
//   - Where four people each are to be as near in level as can be, they go by level: no other way of making
//     fours of them has a smaller sum of differences.
//
// They are of the free rounds alone. They are known only where everybody who is there states a level: games of others count for nothing.

// leveled tells whether everybody who is there in a free round states a level, and lists the levels in tenths.
func (s *Scope) leveled() ([]int, bool) {
	levels := s.n.Levels()
	if levels == nil || len(s.n.Problem.Met) > 0 {
		return nil, false
	}
	for i, person := range s.n.Problem.People {
		if person.Level == 0 && s.common(night.Player(i), night.Player(i)) > 0 {
			return nil, false
		}
	}
	return levels, true
}

// SureWinners is how many games at least have a sure winner: those of people whose every game has one.
func (s *Scope) SureWinners() (least int, known bool) {
	levels, known := s.leveled()
	if !known {
		return 0, false
	}
	gaps := leastGaps(levels)
	return s.quarters(func(i int) int { return night.One(gaps[levels[i]] > s.n.Widest) }), true
}

// TeamGap is what the gaps of all games add up to at least.
func (s *Scope) TeamGap() (least int, known bool) {
	levels, known := s.leveled()
	if !known {
		return 0, false
	}
	gaps := leastGaps(levels)
	odd, odds, fixed := 0, 0, true // of all levels played, and of rounds in which all play
	for r := range s.games {
		if s.seats(r) != len(s.here[r]) {
			continue
		}
		sum := 0
		for _, i := range s.here[r] {
			sum += levels[i]
		}
		odds += sum & 1
	}
	for i, low := range s.Low {
		fixed = fixed && low == s.High[i]
		odd += low * levels[i]
	}
	least = max(odds, s.quarters(func(i int) int { return gaps[levels[i]] }))
	if fixed && (least-odd)&1 != 0 {
		least++
	}
	return least, true
}

// CourtLevels is what the differences between the best and the last on a court add up to at least.
func (s *Scope) CourtLevels() (least int, known bool) {
	levels, known := s.leveled()
	if !known {
		return 0, false
	}
	each := 0
	for r, here := range s.here {
		if r == 0 || s.games[r] != s.games[r-1] || !slices.Equal(here, s.here[r-1]) {
			at := make([]int, len(here))
			for k, i := range here {
				at[k] = levels[i]
			}
			each = nearestFours(at, s.games[r])
		}
		least += each
	}
	near := leastSpreads(levels)
	return max(least, s.quarters(func(i int) int { return near[levels[i]] })), true
}

// quarters adds up what somebody's game costs at least over the games, a quarter for each player, where the free
// games are shared out among people such that it is least.
func (s *Scope) quarters(cost func(i int) int) int {
	curves := make([]curve, s.n.People)
	for i := range curves {
		each := cost(i)
		curves[i].base = each * s.Low[i]
		for range s.High[i] - s.Low[i] {
			curves[i].steps = append(curves[i].steps, each)
		}
	}
	return (s.share(curves) + 3) / 4
}

// leastGaps is, for each level that somebody has, the least difference of two teams of which one has somebody of
// that level. With fewer than four people it is 0.
func leastGaps(levels []int) map[int]int {
	all := slices.Sorted(slices.Values(levels))
	gaps := make(map[int]int)
	for k, own := range all {
		if _, done := gaps[own]; !done {
			gaps[own] = leastGap(own, slices.Delete(slices.Clone(all), k, k+1))
		}
	}
	return gaps
}

// leastGap tries all partners for somebody among others, in ascending order, and the opponents whose levels add up to
// most nearly the same.
func leastGap(own int, others []int) int {
	least, any := 0, false
	for m, mate := range others {
		if m > 0 && mate == others[m-1] {
			continue
		}
		for x, y := 0, len(others)-1; x < y; {
			switch gap := own + mate - others[x] - others[y]; {
			case x == m:
				x++
			case y == m:
				y--
			default:
				if wide := max(gap, -gap); !any || wide < least {
					least, any = wide, true
				}
				if gap == 0 {
					return 0
				}
				if gap > 0 {
					x++
				} else {
					y--
				}
			}
		}
	}
	return least
}

// leastSpreads is, for each level that somebody has, the least difference between best and last of four people of
// whom one has that level.
func leastSpreads(levels []int) map[int]int {
	all := slices.Sorted(slices.Values(levels))
	near := make(map[int]int)
	for first := 0; first+4 <= len(all); first++ {
		four := all[first : first+4]
		for _, l := range four {
			if spread, ok := near[l]; !ok || four[3]-four[0] < spread {
				near[l] = four[3] - four[0]
			}
		}
	}
	return near
}

// nearestFours is the least sum of differences between best and last when so many fours are made of people of
// these levels, nobody in two: along the levels, each four is a run, and whoever is between runs sits out.
func nearestFours(levels []int, fours int) int {
	const never = 1 << 40
	slices.Sort(levels)
	best := make([][]int, fours+1) // at fours made, people passed
	for k := range best {
		best[k] = slices.Repeat([]int{never}, len(levels)+1)
	}
	for passed := range best[0] {
		best[0][passed] = 0
	}
	for k := 1; k <= fours; k++ {
		for passed := 4 * k; passed <= len(levels); passed++ {
			best[k][passed] = min(best[k][passed-1], best[k-1][passed-4]+levels[passed-1]-levels[passed-4])
		}
	}
	if best[fours][len(levels)] >= never {
		return 0
	}
	return best[fours][len(levels)]
}
