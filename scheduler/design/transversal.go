package design

import "club/quadrille/scheduler/design/ring"

// transversal returns a resolvable transversal design: k teams of m people each (person y of team c
// has the number c·m + y) in m rounds of m blocks; each block takes one from each team, and two
// people of different teams share exactly one block. Block y of round b holds the people
// D(c, b) + y for a difference matrix D: a k×m matrix over a group of m elements in which the
// differences of two rows give each element once (Bose & Bush, Ann. Math. Statist. 23 (1952)
// 508-524). Column 0 is zero, so block y of round 0 holds person y of every team.
func transversal(k, m int) (classes [][][]int, ok bool) {
	r, rows, ok := differenceMatrix(k, m)
	if !ok {
		return nil, false
	}
	classes = make([][][]int, m)
	for b := range classes {
		classes[b] = make([][]int, m)
		for y := range classes[b] {
			block := make([]int, k)
			for c := range block {
				block[c] = c*m + r.Add(rows[c][b], y)
			}
			classes[b][y] = block
		}
	}
	return classes, true
}

// differenceMatrix returns k rows of m elements of a ring of m elements in which the differences of
// any two rows are all elements of the ring, and whose first row and column are zero; or false if
// none is known here. In a product of fields of at least k elements each, the rows c·x serve, for k
// elements c whose differences are units.
func differenceMatrix(k, m int) (r *ring.Ring, rows [][]int, ok bool) {
	powers := ring.PrimePowers(m)
	for _, q := range powers {
		if q < k {
			return storedMatrix(k, m)
		}
	}
	r = ring.Fields(m)
	rows = make([][]int, k)
	for i := range rows {
		c := 0
		for _, q := range powers { // the element whose every coordinate is the i-th of its field
			c = c*q + i
		}
		rows[i] = make([]int, m)
		for x := range m {
			rows[i][x] = r.Mul(c, x)
		}
	}
	return r, rows, true
}

// storedMatrix completes a pair of orthomorphisms to a difference matrix of four rows.
func storedMatrix(k, m int) (r *ring.Ring, rows [][]int, ok bool) {
	pair, ok := orthomorphisms[m]
	if !ok || k > 4 {
		return nil, nil, false
	}
	identity := make([]int, m)
	for x := range identity {
		identity[x] = x
	}
	rows = [][]int{make([]int, m), identity, pair[0], pair[1]}
	return ring.Fields(m), rows[:k], true
}

// progressions returns some rounds of a transversal design of four teams of m people for any m: block y of
// round b holds the people y, y+b, y+p·b and y+q·b, modulo m. Two rounds b have no pair in common as
// long as the multiples d·b differ for each difference d of 0, 1, p, q, which they do for the first
// m/gcd(d, m); p and q are chosen to make the least of these greatest.
func progressions(m int) (classes [][][]int) {
	steps, most := [4]int{}, 1
	for q := 3; q < m; q++ {
		for p := 2; p < q; p++ {
			least := m
			for _, d := range []int{1, p, q, p - 1, q - 1, q - p} {
				least = min(least, m/gcd(d, m))
			}
			if least > most {
				steps, most = [4]int{0, 1, p, q}, least
			}
		}
		if most == m {
			break
		}
	}
	for b := range most {
		var class [][]int
		for y := range m {
			block := make([]int, 4)
			for c, step := range steps {
				block[c] = c*m + (y+step*b)%m
			}
			class = append(class, block)
		}
		classes = append(classes, class)
	}
	return classes
}
