package rating

import (
	"cmp"
	"encoding/binary"
	"math/bits"
	"slices"
)

// Design is who played with and against whom, and from that alone which skills the games can compare.
//
// A game says something about the sum of one team less the sum of the other: a row with +1 and -1. What no row
// can see is a direction in which all skills may move together without any game noticing, a vector in the null
// space of the rows. Two people can be compared when every such vector moves them alike. One always exists
// with teams of equal size, moving everybody by the same, so the best rank for n people is n-1.
//
// It reckons exactly, with whole numbers modulo a large prime: ranks and groups are those over the fractions unless
// the prime divides a determinant of some rows, which no club will see. The zero value is a design without
// games.
type Design struct {
	blind  []map[int]uint64 // a basis of the null space: the entries of each vector, by person; nil for one taken out
	moved  [][]int          // of each person, the vectors that have an entry there
	seen   []uint64         // what the game being added sees of each vector, zero between games
	rank   int
	effort int // entries looked at
}

// Add takes in one game between the people a and b, who are numbered from 0. A person may be new.
func (d *Design) Add(a, b []int) {
	for _, team := range [][]int{a, b} {
		for _, p := range team {
			d.grow(p + 1)
		}
	}
	var met []int // the vectors of these people, some more than once
	for _, p := range a {
		for _, v := range d.moved[p] {
			d.seen[v] = add(d.seen[v], d.blind[v][p])
			met = append(met, v)
		}
	}
	for _, p := range b {
		for _, v := range d.moved[p] {
			d.seen[v] = add(d.seen[v], prime-d.blind[v][p])
			met = append(met, v)
		}
	}
	d.effort += len(met) + len(a) + len(b)
	d.eliminate(slices.DeleteFunc(met, func(v int) bool { return d.seen[v] == 0 }))
}

// grow makes room for n people. Nothing is known of a new one, who may move alone.
func (d *Design) grow(n int) {
	for p := len(d.moved); p < n; p++ {
		d.moved = append(d.moved, []int{p})
		d.blind = append(d.blind, map[int]uint64{p: 1})
		d.seen = append(d.seen, 0)
	}
}

// eliminate takes a vector that a game sees out of the basis, after taking what the game sees out of the others.
// It is the one with the fewest entries, so that what is joined costs what the smaller part has.
func (d *Design) eliminate(order []int) {
	if len(order) == 0 {
		return
	}
	slices.SortFunc(order, func(v, w int) int {
		return cmp.Or(cmp.Compare(len(d.blind[v]), len(d.blind[w])), cmp.Compare(v, w))
	})
	order = slices.Compact(order)
	out := order[0]
	inverse := power(d.seen[out], prime-2)
	d.seen[out] = 0
	for _, v := range order[1:] {
		factor := prime - times(d.seen[v], inverse)
		d.seen[v] = 0
		for p, x := range d.blind[out] {
			was, had := d.blind[v][p]
			switch sum := add(was, times(factor, x)); {
			case sum == 0:
				delete(d.blind[v], p)
				d.forget(p, v)
			default:
				d.blind[v][p] = sum
				if !had {
					d.moved[p] = append(d.moved[p], v)
				}
			}
		}
	}
	for p := range d.blind[out] {
		d.forget(p, out)
	}
	d.effort += len(order) * len(d.blind[out])
	d.blind[out] = nil
	d.rank++
}

// forget notes that a vector has no entry of a person any more.
func (d *Design) forget(p, v int) {
	i, last := slices.Index(d.moved[p], v), len(d.moved[p])-1
	d.moved[p][i] = d.moved[p][last]
	d.moved[p] = d.moved[p][:last]
}

// Rank is the rank of the games: how many independent things they tell. With n people n-1 is the most.
func (d *Design) Rank() int { return d.rank }

// People is how many people the design has seen.
func (d *Design) People() int { return len(d.moved) }

// Groups numbers the people so that two with the same number can be compared by the games, and two with
// different ones cannot. The numbers are from 0 in the order of the people.
func (d *Design) Groups() []int {
	groups := make([]int, len(d.moved))
	number := map[string]int{}
	for p := range groups {
		key := d.move(p)
		g, known := number[key]
		if !known {
			g = len(number)
			number[key] = g
		}
		groups[p] = g
	}
	return groups
}

// move writes down how what the games cannot see moves a person.
func (d *Design) move(p int) string {
	vectors := slices.Sorted(slices.Values(d.moved[p]))
	var key []byte
	for _, v := range vectors {
		key = binary.AppendUvarint(key, uint64(v))
		key = binary.AppendUvarint(key, d.blind[v][p])
	}
	return string(key)
}

// Comparable reports whether the games compare two people.
func (d *Design) Comparable(p, q int) bool {
	return p == q || p < len(d.moved) && q < len(d.moved) && d.move(p) == d.move(q)
}

// prime is 2^61-1, by which remainders are quick to find.
const prime = 1<<61 - 1

// add is x+y for numbers of at most prime.
func add(x, y uint64) uint64 {
	sum := x + y
	for sum >= prime {
		sum -= prime
	}
	return sum
}

// times is x·y for numbers of at most prime: 2^61 leaves 1.
func times(x, y uint64) uint64 {
	high, low := bits.Mul64(x, y)
	return add(high<<3|low>>61, low&prime)
}

// power is x to the power of n; to that of prime-2 it is the inverse of x (Fermat).
func power(x, n uint64) uint64 {
	out := uint64(1)
	for ; n > 0; n >>= 1 {
		if n&1 == 1 {
			out = times(out, x)
		}
		x = times(x, x)
	}
	return out
}
