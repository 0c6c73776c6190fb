package symmetry

import (
	"testing"

	"club/quadrille/scheduler/design/ring"
)

// groups are one of each kind that the catalogue uses.
func groups() map[string]Group {
	return map[string]Group{
		"cyclic with one fixed": {Ring: ring.Integers(23), Layers: 1, Fixed: 1, Multiplier: 1, Cycle: 1},
		"three layers turned":   {Ring: ring.Integers(14), Layers: 3, Fixed: 2, Multiplier: 9, Step: 1, Cycle: 1},
		"fixed people turned":   {Ring: ring.Integers(15), Layers: 3, Fixed: 3, Multiplier: 1, Step: 1, Cycle: 3},
		"multiplied":            {Ring: ring.Integers(23), Layers: 4, Multiplier: 2, Cycle: 1},
		"shifted": {
			Ring:   ring.Product(ring.Extension(4, []int{3, 3}), ring.Integers(3)),
			Layers: 1, Fixed: 12, Multiplier: 13, Shift: 1, Cycle: 3,
		},
	}
}

func TestMovesArePermutations(t *testing.T) {
	for name, g := range groups() {
		for shift := range g.Ring.N() {
			checkPermutation(t, name, g.People(), func(p int) int { return g.Translate(p, shift) })
		}
		checkPermutation(t, name, g.People(), g.Turn)
	}
}

func checkPermutation(t *testing.T, name string, people int, move func(int) int) {
	t.Helper()
	seen := make([]bool, people)
	for p := range people {
		q := move(p)
		if q < 0 || q >= people || seen[q] {
			t.Fatalf("%s: %d moves to %d, which is taken or nobody", name, p, q)
		}
		seen[q] = true
	}
}

func TestTurnsComeBack(t *testing.T) {
	for name, g := range groups() {
		for p := range g.People() {
			q := p
			for range g.Order() {
				q = g.Turn(q)
			}
			if q != p {
				t.Errorf("%s: after %d turns %d is at %d", name, g.Order(), p, q)
			}
		}
	}
}

// TestPairsAreOrbits: each pair has a class, moves keep it, and sizes add up.
func TestPairsAreOrbits(t *testing.T) {
	for name, g := range groups() {
		pairs := PairsOf(g)
		size := make([]int, pairs.Classes())
		for a := range g.People() {
			for b := range a {
				c := pairs.Class(a, b)
				size[c]++
				if pairs.Class(b, a) != c {
					t.Errorf("%s: %d and %d have another class the other way round", name, a, b)
				}
				if pairs.Class(g.Turn(a), g.Turn(b)) != c || pairs.Class(g.Translate(a, 1), g.Translate(b, 1)) != c {
					t.Errorf("%s: moving %d and %d changes their class", name, a, b)
				}
			}
		}
		for c, n := range size {
			if n != pairs.Size(c) {
				t.Errorf("%s: class %d has %d pairs, said are %d", name, c, n, pairs.Size(c))
			}
		}
	}
}
