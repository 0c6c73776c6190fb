package design

import "club/quadrille/scheduler/design/ring"

// InHole tells whether two people never share a table of the translates: they differ by a multiple
// of the hole's element, or both are fixed.
func (s Starter) InHole(a, b int) bool {
	r := s.Group.Ring
	moving := s.Group.Layers * r.N()
	if a >= moving || b >= moving {
		return a >= moving && b >= moving
	}
	return multiple(r, s.Hole, r.Sub(a%r.N(), b%r.N()))
}

// multiple tells whether a is a multiple of e.
func multiple(r *ring.Ring, e, a int) bool {
	for x := range r.N() {
		if r.Mul(e, x) == a {
			return true
		}
	}
	return false
}

// Sex returns 0 for a man and 1 for a woman of a design for couples: the first half of the layers
// and of the fixed people are men, the second half women.
func (s Starter) Sex(a int) int {
	moving := s.Group.Layers * s.Group.Ring.N()
	if a >= moving {
		return (a - moving) * 2 / s.Group.Fixed
	}
	return a * 2 / moving
}

// Wanted returns how often two people shall partner and oppose in the translates of the base
// rounds. In a QuadCycle that is together at most once, given as a partnership.
func (s Starter) Wanted(a, b int) (partner, oppose int) {
	switch {
	case s.Kind == QuadCycle:
		return 1, 0
	case s.Kind == CoupleCycle && s.Sex(a) == s.Sex(b):
		return 0, 1
	case s.Kind == CoupleCycle && s.spouses(a, b):
		return 0, 0
	case s.Kind == CoupleCycle:
		return 1, 1
	case s.InHole(a, b):
		return 0, 0
	}
	return 1, 2
}

// spouses tells whether two people of a design for couples are married: the same element of
// layers half the number of layers apart, or the two fixed people.
func (s Starter) spouses(a, b int) bool {
	moving := s.Group.Layers * s.Group.Ring.N()
	if a >= moving || b >= moving {
		return a >= moving && b >= moving
	}
	return max(a, b)-min(a, b) == moving/2
}

// Seated returns the people who play in the base rounds, in order. In a frame the hole sits out; in
// other designs those who find no place at tables of four do, one of each of the first layers: 0, N, 2N.
func (s Starter) Seated() []int {
	n := s.Group.Ring.N()
	over := 0
	if s.Kind == WhistCycle || s.Kind == QuadCycle {
		over = s.People % 4
	}
	var seated []int
	for p := range s.Group.People() {
		rests := p%n == 0 && p/n < min(over, s.Group.Layers)
		if s.Kind == WhistFrame {
			rests = s.InHole(p, 0)
		}
		if !rests {
			seated = append(seated, p)
		}
	}
	return seated
}
