package design

import "slices"

// Prefix returns the r rounds that go best together, in an order in which a night that ends early
// has also been a good one: few repeated partners first of all, then few repeated meetings (the sum
// over all pairs of people of C(meetings, 2)), then few repeated opponents. If r is not less than
// the number of rounds, all are returned, in such an order; a negative r counts as 0.
//
// All these sums are sums over pairs of rounds, so the best rounds are the r points of least total
// weight in a complete graph. Prefix starts from the first r rounds and from sets grown around
// several single rounds, and exchanges rounds while that helps. The result need not be the best
// set, but it is the same on every machine and takes a few milliseconds at most for 100 rounds.
func Prefix(rounds [][]Table, r int) [][]Table {
	r = max(0, min(r, len(rounds)))
	if r == 0 {
		return nil
	}
	w := overlaps(rounds)
	set := make([]int, r)
	for i := range set {
		set[i] = i
	}
	least := w.exchange(set)
	for start := 0; start < len(rounds) && least > 0; start += 1 + len(rounds)/prefixStarts {
		other := w.grow(start, r)
		if cost := w.exchange(other); cost < least {
			set, least = other, cost
		}
	}
	out := make([][]Table, r)
	for i, a := range w.order(set) {
		out[i] = rounds[a]
	}
	return out
}

// prefixStarts is about how many single rounds Prefix grows a set around.
const prefixStarts = 8

// weights tells for every two rounds what it costs to play both.
type weights [][]int

// grow returns r rounds: the given one, and then always the one that adds least.
func (w weights) grow(start, r int) []int {
	set := []int{start}
	added := slices.Clone(w[start])
	for len(set) < r {
		next := -1
		for a, cost := range added {
			if !slices.Contains(set, a) && (next < 0 || cost < added[next]) {
				next = a
			}
		}
		set = append(set, next)
		for a := range added {
			added[a] += w[next][a]
		}
	}
	return set
}

// exchange swaps rounds of the set for others, the most useful swap first, while the total weight
// falls; it returns the total.
func (w weights) exchange(set []int) (total int) {
	inside := make([]bool, len(w))
	load := make([]int, len(w)) // weight of each round together with the set
	for _, a := range set {
		inside[a] = true
		for b := range load {
			load[b] += w[a][b]
		}
	}
	for _, a := range set {
		total += load[a]
	}
	total /= 2
	for {
		gain, place, in := 0, -1, -1
		for i, out := range set {
			for b := range w {
				if g := load[out] - load[b] + w[out][b]; !inside[b] && g > gain {
					gain, place, in = g, i, b
				}
			}
		}
		if place < 0 {
			return total
		}
		out := set[place]
		set[place], inside[in], inside[out] = in, true, false
		total -= gain
		for b := range load {
			load[b] += w[in][b] - w[out][b]
		}
	}
}

// order returns the set in the order of play: the last round is the one that weighs most together
// with all others, and so on backwards; of equal ones the later in the design is played later.
func (w weights) order(set []int) []int {
	rest := slices.Clone(set)
	slices.Sort(rest)
	played := make([]int, len(set))
	for n := len(rest); n > 0; n-- {
		worst, most := 0, -1
		for i, a := range rest {
			load := 0
			for _, b := range rest {
				load += w[a][b]
			}
			if load >= most {
				worst, most = i, load
			}
		}
		played[n-1] = rest[worst]
		rest = slices.Delete(rest, worst, worst+1)
	}
	return played
}

// total is the weight of playing all rounds.
func (w weights) total() (sum int) {
	for a := range w {
		for b := range a {
			sum += w[a][b]
		}
	}
	return sum
}
