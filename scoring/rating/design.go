package rating

import "math"

// Design is who played with and against whom, and from that alone which skills the games can compare.
//
// A game says something about the sum of one team less the sum of the other: a row with +1 and -1. What no row
// can see is a direction in which all skills may move together without any game noticing, a vector in the null
// space of the rows. Two people can be compared when every such vector moves them alike. One always exists
// with teams of equal size, moving everybody by the same, so the best rank for n people is n-1.
//
// The zero value is a design without games.
type Design struct {
	blind [][]float64 // a basis of the null space, by person
	n     int
}

// tolerance separates zero from the rounding of a few hundred eliminations on entries of 1 and -1.
const tolerance = 1e-9

// Add takes in one game between the people a and b, who are numbered from 0. A person may be new.
func (d *Design) Add(a, b []int) {
	for _, team := range [][]int{a, b} {
		for _, p := range team {
			d.grow(p + 1)
		}
	}
	pivot, most := -1, tolerance
	var seen []float64
	for i, v := range d.blind {
		x := 0.0
		for _, p := range a {
			x += v[p]
		}
		for _, p := range b {
			x -= v[p]
		}
		if math.Abs(x) > tolerance && seen == nil {
			seen = make([]float64, len(d.blind))
		}
		if seen != nil {
			seen[i] = x
		}
		if math.Abs(x) > most {
			pivot, most = i, math.Abs(x)
		}
	}
	if pivot >= 0 {
		d.eliminate(pivot, seen)
	}
}

// grow makes room for n people. Nothing is known of a new one, who may move alone.
func (d *Design) grow(n int) {
	if n <= d.n {
		return
	}
	for i, v := range d.blind {
		d.blind[i] = append(v, make([]float64, n-d.n)...)
	}
	for p := d.n; p < n; p++ {
		v := make([]float64, n)
		v[p] = 1
		d.blind = append(d.blind, v)
	}
	d.n = n
}

// eliminate takes the vector pivot out of the basis, after taking what the game sees out of all others.
func (d *Design) eliminate(pivot int, seen []float64) {
	out := d.blind[pivot]
	for i, v := range d.blind {
		if i == pivot || math.Abs(seen[i]) <= tolerance {
			continue
		}
		factor, size := seen[i]/seen[pivot], 0.0
		for p := range v {
			v[p] -= factor * out[p]
			size = max(size, math.Abs(v[p]))
		}
		for p := range v {
			v[p] /= size // the largest entry stays 1, so that rounding cannot build up
		}
	}
	last := len(d.blind) - 1
	d.blind[pivot] = d.blind[last]
	d.blind = d.blind[:last]
}

// Rank is the rank of the games: how many independent things they tell. With n people n-1 is the most.
func (d *Design) Rank() int { return d.n - len(d.blind) }

// People is how many people the design has seen.
func (d *Design) People() int { return d.n }

// Groups numbers the people so that two with the same number can be compared by the games, and two with
// different ones cannot. The numbers are from 0 in the order of the people.
func (d *Design) Groups() []int {
	groups := make([]int, d.n)
	var leaders []int
	for p := range groups {
		groups[p] = -1
		for g, leader := range leaders {
			if d.alike(p, leader) {
				groups[p] = g
				break
			}
		}
		if groups[p] < 0 {
			groups[p] = len(leaders)
			leaders = append(leaders, p)
		}
	}
	return groups
}

// alike reports whether nothing the games cannot see moves two people apart.
func (d *Design) alike(p, q int) bool {
	for _, v := range d.blind {
		if math.Abs(v[p]-v[q]) > tolerance*1e3 {
			return false
		}
	}
	return true
}

// Comparable reports whether the games compare two people.
func (d *Design) Comparable(p, q int) bool {
	return p == q || p < d.n && q < d.n && d.alike(p, q)
}
