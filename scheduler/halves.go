package scheduler

import (
	"slices"

	"club/quadrille/scheduler/design"
)

// fromHalves makes a board for nights on which about half of the people sit out each round: if nobody
// may sit out twice running, two halves must all but alternate, and each half can have a design of
// its own.
func (n *night) fromHalves(drawn *board, d *dice) *board {
	seats, rounds := drawn.shapes[0].seats(), len(drawn.shapes)
	if n.people > 2*seats || 4*(n.people-seats) < 3*seats || rounds < 3 {
		return nil
	}
	var tables [2][][]design.Table
	for h := range tables {
		best, ok := design.Best(seats, (rounds+1-h)/2)
		if !ok {
			return nil
		}
		tables[h] = best
	}
	people := n.everybody()
	shuffle(d, people)
	b := drawn.blank()
	outs, last := make([]int, n.people), make([]bool, n.people)
	for r := range rounds {
		half := people[:seats]
		if r%2 == 1 {
			half = append(slices.Clone(people[seats:]), slices.Repeat([]Player{Nobody}, 2*seats-n.people)...)
		}
		b.seatTables(r, tables[r%2][r/2], half, outs, last)
	}
	b.recount()
	return b
}
