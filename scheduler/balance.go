package scheduler

import "math"

// tenths is how finely levels are told apart when teams are balanced.
const tenths = 10

// levels returns each person's level in tenths, people without one at the average of the others. It
// is nil when nobody states a level.
func (n *night) levels() []int {
	sum, stated := 0.0, 0
	for _, person := range n.p.People {
		if person.Level != 0 {
			sum += person.Level
			stated++
		}
	}
	if stated == 0 {
		return nil
	}
	levels := make([]int, n.people)
	for i, person := range n.p.People {
		level := person.Level
		if level == 0 {
			level = sum / float64(stated)
		}
		levels[i] = int(math.Round(level * tenths))
	}
	return levels
}

// gameLevel is what the game on seats 4g to 4g+3 of planned round r weighs for levels and bands.
func (b *board) gameLevel(r, g int) int {
	row := b.row(r)[4*g : 4*g+4]
	return b.quartet(b.shapes[r].courts[g], row[0], row[1], row[2], row[3])
}

// quartet is what a game of i and j against k and l on the court weighs for levels and bands.
func (b *board) quartet(c Court, i, j, k, l int32) int {
	gap := b.levels[i] + b.levels[j] - b.levels[k] - b.levels[l]
	w := gap * gap / 16
	if limit := b.n.p.LevelLimit; limit > 0 && max(gap, -gap) > b.n.widest {
		w += (score{onesided: 1}).weight()
	}
	if b.n.bands {
		for _, i := range [4]int32{i, j, k, l} {
			w += outOfBand * one(!b.n.p.Courts[c].suits(b.n.p.People[i].Level))
		}
	}
	return w
}

// levelDelta is the change of the weight of levels if seats s and t of round r change occupants.
func (b *board) levelDelta(r, s, t int) int {
	row, seats := b.row(r), b.shapes[r].seats()
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
	if s < b.shapes[r].seats() {
		at := (r*b.width + s) >> 2
		b.leveled -= b.level[at]
		b.level[at] = b.gameLevel(r, s>>2)
		b.leveled += b.level[at]
	}
}

// outOfBand is the cost of one person on a court whose preferred band is another.
const outOfBand = 8

// widestGap is the greatest difference of team levels, in tenths, whose stronger team wins with a
// chance of at most the limit.
func widestGap(limit float64) int {
	gap := 0
	for gap < 1000 && WinChance(float64(gap+1)/tenths, 0) <= limit {
		gap++
	}
	return gap
}
