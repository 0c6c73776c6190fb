package search

import (
	"club/quadrille/scheduler/night"
)

// gameLevel is what the game on seats 4g to 4g+3 of planned round r weighs for levels and bands.
func (b *board) gameLevel(r, g int) int {
	row := b.row(r)[4*g : 4*g+4]
	return b.quartet(b.shapes[r].Courts[g], row[0], row[1], row[2], row[3])
}

// quartet is what a game of i and j against k and l on the court weighs for levels and bands.
func (b *board) quartet(c night.Court, i, j, k, l int32) int {
	gap := b.levels[i] + b.levels[j] - b.levels[k] - b.levels[l]
	w := gap * gap / 16
	if max(gap, -gap) > b.n.Widest {
		w += b.onesided
	}
	if b.n.Bands {
		for _, i := range [4]int32{i, j, k, l} {
			w += outOfBand * night.One(!b.n.Problem.Courts[c].Suits(b.n.Problem.People[i].Level))
		}
	}
	return w
}

// levelOf is what the game of a seat of round r weighs for levels, 0 for the bench.
func (b *board) levelOf(r, s int) int {
	if s >= b.shapes[r].Seats() {
		return 0
	}
	return b.level[(r*b.width+s)>>2]
}

// levelDelta is the change of the weight of levels if seats s and t of round r change occupants.
func (b *board) levelDelta(r, s, t int) int {
	row, seats := b.row(r), b.shapes[r].Seats()
	row[s], row[t] = row[t], row[s]
	d := 0
	for k, seat := range [2]int{s, t} {
		if seat < seats && (k == 0 || s>>2 != t>>2) {
			d += b.gameLevel(r, seat>>2) - b.level[(r*b.width+seat)>>2]
		}
	}
	row[s], row[t] = row[t], row[s]
	return d
}

// relevel brings what is noted of a seat's game up to date.
func (b *board) relevel(r, s int) {
	if s < b.shapes[r].Seats() {
		at := (r*b.width + s) >> 2
		b.leveled -= b.level[at]
		b.level[at] = b.gameLevel(r, s>>2)
		b.leveled += b.level[at]
	}
}

// outOfBand is the cost of one person on a court whose preferred band is another.
const outOfBand = 8
