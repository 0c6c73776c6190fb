package design

import (
	"club/quadrille/scheduler/design/ring"
	"club/quadrille/scheduler/design/symmetry"
)

// blockClasses returns a resolvable balanced design with blocks of four: v people in (v-1)/3 rounds
// of v/4 blocks such that each two share exactly one block, where a formula is known:
// v = 3q+1 for a prime power q ≡ 1 (mod 4), and powers of 4. Such designs exist for all v ≡ 4 (mod
// 12) (Hanani, Ray-Chaudhuri & Wilson, Discrete Math. 3 (1972) 343-357).
func blockClasses(v int) (classes [][]Table, ok bool) {
	if v == 4 {
		return [][]Table{{{0, 1, 2, 3}}}, true
	}
	if v%3 != 1 {
		return nil, false
	}
	if q := (v - 1) / 3; q%4 == 1 {
		if _, _, ok := ring.PrimePower(q); ok {
			return threeLayers(q), true
		}
	}
	if p, k, ok := ring.PrimePower(v); ok && p == 2 && k%2 == 0 {
		return affineLines(v), true
	}
	return nil, false
}

// threeLayers builds the resolvable design of blocks of four on three copies of the field of q =
// 4t+1 elements and one more person, ∞ (Hanani, Ray-Chaudhuri & Wilson 1972). The base class holds
// {∞, 0₀, 0₁, 0₂} and, for g a generator and e = 0..t-1, the blocks
// {gᵉ, -gᵉ} in copy j with {g^(e+t), -g^(e+t)} in copy j+1; its translates are the others. The
// person x of copy j has the number j·q + x, ∞ has 3q.
func threeLayers(q int) [][]Table {
	f := ring.Field(q)
	g := 1
	for f.Order(g) != q-1 {
		g++
	}
	t := (q - 1) / 4
	power := make([]int, q-1)
	power[0] = f.One()
	for e := 1; e < q-1; e++ {
		power[e] = f.Mul(power[e-1], g)
	}
	base := []Table{{3 * q, 0, q, 2 * q}}
	for j := range 3 {
		next := (j + 1) % 3
		for e := range t {
			x, y := power[e], power[e+t]
			base = append(base, Table{j*q + x, j*q + f.Neg(x), next*q + y, next*q + f.Neg(y)})
		}
	}
	layers := symmetry.Group{Ring: f, Layers: 3, Fixed: 1}
	classes := make([][]Table, q)
	for t := range classes {
		classes[t] = relabelRound(base, func(p int) int { return layers.Translate(p, t) })
	}
	return classes
}

// affineLines returns the lines of the affine space of v = 4^d points over the field of four
// elements, sorted into classes of parallels (Bose, Sankhyā 6 (1942) 105-110). Points are elements
// of the field of v elements; the lines through 0 are the multiples of the subfield of four.
func affineLines(v int) [][]Table {
	f := ring.Field(v)
	w := f.One() // a cube root of 1, so that {0, 1, w, w²} is the subfield of four
	for x := 2; f.Order(w) != 3; x++ {
		w = x
	}
	var classes [][]Table
	seen := make([]bool, v)
	for x := 1; x < v; x++ {
		if seen[x] {
			continue
		}
		line := Table{0, x, f.Mul(w, x), f.Mul(w, f.Mul(w, x))}
		for _, p := range line {
			seen[p] = true
		}
		classes = append(classes, parallels(f, line))
	}
	return classes
}

// parallels returns the distinct translates of a line, which fill the space without overlap.
func parallels(f *ring.Ring, line Table) []Table {
	seen := make([]bool, f.N())
	var class []Table
	for t := range f.N() {
		if seen[t] {
			continue
		}
		moved := line.relabel(func(p int) int { return f.Add(p, t) })
		for _, p := range moved {
			seen[p] = true
		}
		class = append(class, moved)
	}
	return class
}
