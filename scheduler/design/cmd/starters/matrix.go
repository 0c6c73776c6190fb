package main

import (
	"fmt"
	"io"
	"math/rand/v2"

	"club/quadrille/scheduler/design/ring"
)

// matrix is a try at a difference matrix of four rows over a ring: the first is zero, the second
// names the elements in order, the others are arranged.
type matrix struct {
	r    *ring.Ring
	rows [3][]int
	seen [3][]int // per pair of rows, how often each difference occurs
	cost int
	last struct{ row, a, b int }
}

// rowPairs are the pairs of rows whose differences count.
var rowPairs = [3][2]int{{0, 1}, {0, 2}, {1, 2}}

func newMatrix(r *ring.Ring, rng *rand.Rand) *matrix {
	m := &matrix{r: r}
	m.rows[0] = make([]int, r.N())
	for x := range m.rows[0] {
		m.rows[0][x] = x
	}
	m.rows[1], m.rows[2] = rng.Perm(r.N()), rng.Perm(r.N())
	for k := range m.seen {
		m.seen[k] = make([]int, r.N())
	}
	m.cost = len(m.seen) * r.N() // each difference is missing as yet
	for x := range r.N() {
		m.count(x, 1)
	}
	return m
}

// count adds (sign 1) or takes away (-1) the differences of one column.
func (m *matrix) count(column, sign int) {
	for k, pair := range rowPairs {
		d := m.r.Sub(m.rows[pair[1]][column], m.rows[pair[0]][column])
		off := m.seen[k][d] - 1
		m.seen[k][d] += sign
		m.cost += (off+sign)*(off+sign) - off*off
	}
}

func (m *matrix) price() int { return m.cost }

// shake swaps two elements of one of the free rows.
func (m *matrix) shake(rng *rand.Rand) {
	m.last.row = 1 + rng.IntN(2)
	m.last.a = rng.IntN(m.r.N())
	m.last.b = (m.last.a + 1 + rng.IntN(m.r.N()-1)) % m.r.N()
	m.back()
}

// back swaps them again.
func (m *matrix) back() {
	row, a, b := m.rows[m.last.row], m.last.a, m.last.b
	m.count(a, -1)
	m.count(b, -1)
	row[a], row[b] = row[b], row[a]
	m.count(a, 1)
	m.count(b, 1)
}

// searchMatrix prints the free rows of a difference matrix, moved so that their first column is 0.
func (o options) searchMatrix(out io.Writer) error {
	if o.matrix < 4 {
		return fmt.Errorf("no difference matrix of four rows has order %d; the order must be 4 or more", o.matrix)
	}
	r := ring.Fields(o.matrix)
	for try := range o.tries {
		seed := o.seed + uint64(try)
		rng := rand.New(rand.NewPCG(seed, 0))
		m := newMatrix(r, rng)
		if !anneal(m, rng, o.moves, 3, 0.25) {
			continue
		}
		fmt.Fprintf(out, "difference matrix of order %d, seed %d:\n", o.matrix, seed)
		for _, row := range m.rows[1:] {
			first := row[0]
			for x := range row {
				row[x] = r.Sub(row[x], first)
			}
			fmt.Fprintln(out, row)
		}
		return nil
	}
	return fmt.Errorf("no difference matrix of order %d in %d tries; try more moves or another seed", o.matrix, o.tries)
}
