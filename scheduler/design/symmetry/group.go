// Package symmetry moves people about by the symmetries from which a starter makes a whole design.
package symmetry

import "club/quadrille/scheduler/design/ring"

// Group acts on Layers copies of a ring and on Fixed further people. The element x of layer j is
// the person j·N + x, N the size of the ring; the fixed people have the numbers from Layers·N up.
//
// Two kinds of moves belong to it. A translation by t moves x to x + t within its layer and leaves
// the fixed people alone: the translates of one round are the rounds of the design. The turn maps
// the base round to itself: it moves x of layer j to Multiplier·x + Shift of layer j + Step and
// the fixed people in cycles of length Cycle (as far as they make whole cycles). So one table of
// each orbit under the turn describes the whole base round.
type Group struct {
	Ring       *ring.Ring
	Layers     int // at least 1
	Fixed      int
	Multiplier int // a unit of the ring
	Shift      int
	Step       int
	Cycle      int // at least 1
}

// People is the number of people moved.
func (g Group) People() int { return g.Layers*g.Ring.N() + g.Fixed }

// Translate returns where person p goes when t is added.
func (g Group) Translate(p, t int) int {
	n := g.Ring.N()
	if p >= g.Layers*n {
		return p
	}
	return p - p%n + g.Ring.Add(p%n, t)
}

// Turn returns where person p goes under the turn.
func (g Group) Turn(p int) int {
	n := g.Ring.N()
	moving := g.Layers * n
	if p < moving {
		x := g.Ring.Add(g.Ring.Mul(g.Multiplier, p%n), g.Shift)
		return (p/n+g.Step)%g.Layers*n + x
	}
	i := p - moving
	if first := i - i%g.Cycle; first+g.Cycle <= g.Fixed {
		return moving + first + (i+1)%g.Cycle
	}
	return p
}

// Orbit returns p and where it goes under repeated turns, each person once.
func (g Group) Orbit(p int) []int {
	orbit := []int{p}
	for q := g.Turn(p); q != p; q = g.Turn(q) {
		orbit = append(orbit, q)
	}
	return orbit
}

// Order is the least number of turns after which everybody is back.
func (g Group) Order() int {
	order := 1
	for p := range g.People() {
		order = lcm(order, len(g.Orbit(p)))
	}
	return order
}

func lcm(a, b int) int {
	x, y := a, b
	for y > 0 {
		x, y = y, x%y
	}
	return a / x * b
}
