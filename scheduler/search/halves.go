package search

import (
	"slices"

	"club/quadrille/scheduler/design"
	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/night"
)

// fromHalves makes a board for nights on which about half of the people sit out each round: if nobody
// may sit out twice running, two halves must all but alternate, and each half can have a design of
// its own.
func fromHalves(n *night.Night, drawn *board, d *dice.Dice) *board {
	seats, rounds := drawn.shapes[0].Seats(), len(drawn.shapes)
	if n.People > 2*seats || 4*(n.People-seats) < 3*seats || rounds < 3 {
		return nil
	}
	var tables [2][][]design.Table
	for h := range tables {
		if tables[h] = halfTables(seats, (rounds+1-h)/2); tables[h] == nil {
			return nil
		}
	}
	people := n.Everybody()
	dice.Shuffle(d, people)
	b := drawn.blank()
	outs, last := make([]int, n.People), make([]bool, n.People)
	for r := range rounds {
		half := people[:seats]
		if r%2 == 1 {
			half = append(slices.Clone(people[seats:]), slices.Repeat([]night.Player{night.Nobody}, 2*seats-n.People)...)
		}
		b.seatTables(r, tables[r%2][r/2], half, outs, last)
	}
	b.recount()
	return b
}

// halfTables returns rounds for a half that all plays at once: a design, or where a night is longer than
// any, a whist tournament that begins again; nil if there is none.
func halfTables(seats, rounds int) [][]design.Table {
	if best, ok := design.Best(seats, rounds); ok {
		return best
	}
	whist, ok := design.Whist(seats)
	if !ok {
		return nil
	}
	tables := make([][]design.Table, rounds)
	for r := range tables {
		tables[r] = whist[r%len(whist)]
	}
	return tables
}
