package main

import (
	"math/rand/v2"

	"club/quadrille/scheduler/design"
)

// motion is the symmetry of one base round: where it takes each person, after how many times all
// are back, and how many tables that differ by more than a translation it makes of one.
type motion struct {
	next   []int
	order  int
	repeat int
}

// motionOf returns the turn of a base round, or the translation by its period.
func motionOf(s design.Starter, round int) motion {
	m := motion{order: s.Group.Order(), repeat: s.Group.Order()}
	if s.Period != nil {
		m.order, m.repeat = s.Group.Ring.N()/s.Period[round], 1
	}
	for a := range s.Group.People() {
		m.next = append(m.next, s.Turn(round, design.Table{a})[0])
	}
	return m
}

// orbit returns a and where it goes, each person once.
func (m motion) orbit(a int) []int {
	orbit := []int{a}
	for b := m.next[a]; b != a; b = m.next[b] {
		orbit = append(orbit, b)
	}
	return orbit
}

// some returns a random person of the orbit of a, in most cases a itself.
func (m motion) some(a int, rng *rand.Rand) int {
	if m.order > 1 && rng.IntN(2) == 0 {
		for range rng.IntN(m.order) {
			a = m.next[a]
		}
	}
	return a
}
