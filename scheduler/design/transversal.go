package design

// transversal returns a resolvable transversal design: k teams of m people each (person y of team c
// has the number c·m + y) in m rounds of m blocks; each block takes one from each team, and two
// people of different teams share exactly one block. Block y of round b holds the people
// D(c, b) + y for a difference matrix D: a k×m matrix over a group of m elements in which the
// differences of two rows give each element once. Row 0 and column 0 are zero, so block y of round
// 0 holds person y of each team.
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
				block[c] = c*m + r.add(rows[c][b], y)
			}
			classes[b][y] = block
		}
	}
	return classes, true
}

// differenceMatrix returns k rows of m elements of a ring of m elements in which the differences of
// any two rows are all elements of the ring, or false if none is known. In a product of fields of
// at least k elements each, the rows c·x serve, for k elements c whose differences are units.
func differenceMatrix(k, m int) (r *ring, rows [][]int, ok bool) {
	powers := primePowers(m)
	for _, q := range powers {
		if q < k {
			return storedMatrix(k, m)
		}
	}
	r = fields(m)
	rows = make([][]int, k)
	for i := range rows {
		c := 0
		for _, q := range powers { // the element whose every coordinate is the i-th of its field
			c = c*q + i
		}
		rows[i] = make([]int, m)
		for x := range m {
			rows[i][x] = r.times(c, x)
		}
	}
	return r, rows, true
}

func storedMatrix(k, m int) (r *ring, rows [][]int, ok bool) { return nil, nil, false }
