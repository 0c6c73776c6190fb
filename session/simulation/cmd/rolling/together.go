package main

import "slices"

// Four people come off court together. If two of them are called again at the same call, they meet again. How many calls
// each of them lets pass is not free: as many people wait after each call whoever is called, so that in the mean of a
// night the calls that the four let pass are that number in all (J. D. C. Little, "A Proof for the Queuing Formula
// L = λW", Operations Research 9 (1961) 383-387: four come for each call). With eight who wait they are eight, and then
// all four can only be called apart if one of them goes straight back on.

// mostPassed is how many calls four people let pass in all, at most, in what follows. With ten or more all are apart.
const mostPassed = 60

// pairsTogether is, for each number of calls that four people let pass in all, the fewest pairs of them who are called
// again together, if each lets pass at least so many; -1 where that cannot be.
func pairsTogether(least int) []int {
	fewest := slices.Repeat([]int{-1}, mostPassed+1)
	for a := least; 4*a <= mostPassed; a++ {
		for b := a; a+3*b <= mostPassed; b++ {
			for c := b; a+b+2*c <= mostPassed; c++ {
				for d := c; a+b+c+d <= mostPassed; d++ {
					pairs := one(a == b) + one(a == c) + one(a == d) + one(b == c) + one(b == d) + one(c == d)
					if at := a + b + c + d; fewest[at] < 0 || pairs < fewest[at] {
						fewest[at] = pairs
					}
				}
			}
		}
	}
	return fewest
}

// meanTogether is how many pairs of four are called again together at least, in the mean of many fours who let pass so
// many calls in the mean: what lies on or above the chords of [pairsTogether]. It is false where so few cannot be.
func meanTogether(passed float64, least int) (float64, bool) {
	fewest := pairsTogether(least)
	if passed < float64(4*least) || passed > mostPassed-1 {
		return 0, passed > mostPassed-1
	}
	below := 6.0
	for s, x := range fewest {
		for t, y := range fewest {
			if x >= 0 && y >= 0 && float64(s) <= passed && passed < float64(t) {
				below = min(below, float64(x)+float64(y-x)*(passed-float64(s))/float64(t-s))
			}
		}
	}
	return below, true
}

// passed is how many games there are whose four all play again, and how many calls they let pass in all.
func (k *known) passed() (fours, calls int) {
	for s, seat := range k.seat {
		all, sum := true, 0
		for _, p := range seat {
			at := slices.Index(k.turns[p], s) + 1
			if at == len(k.turns[p]) {
				all = false
				break
			}
			for u := s + 1; u < k.turns[p][at]; u++ {
				sum += one(k.slots[u].at >= k.slots[s].over)
			}
		}
		if all {
			fours++
			calls += sum
		}
	}
	return fours, calls
}
