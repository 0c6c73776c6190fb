package search

import (
	"slices"

	"club/quadrille/scheduler/dice"
)

// relabelTries is how many exchanges of two people's places all night are tried, and hotRelabel the temperature at
// their beginning; it falls to nothing.
const relabelTries, hotRelabel = 20_000, 40

// relabelRuns is how often that is done anew; the best counts.
const relabelRuns = 5

// relabel lets people take each other's places all night long so that levels balance. Where all are there all the
// time and nobody asks for anything, that changes nothing else: everybody meets as many others as often.
func (b *board) relabel(d *dice.Dice) {
	l := b.leveling
	if l == nil || l.bands != nil || b.held != nil || b.n.Wishes != nil || b.n.Side != nil || !regular(b.n, b) {
		return
	}
	who := b.n.Everybody()      // who is in each place
	level := slices.Clone(l.of) // of whom is in each place
	game := func(r, s int) int {
		row := b.row(r)[s&^3:]
		return l.apart(level[row[0]] + level[row[1]] - level[row[2]] - level[row[3]])
	}
	cost := func(i, j int) (sum int) { // of the games of two places
		for r, shape := range b.shapes {
			s, t := int(b.where[r*b.n.People+i]), int(b.where[r*b.n.People+j])
			if s < shape.Seats() {
				sum += game(r, s)
			}
			if t < shape.Seats() && (s >= shape.Seats() || s>>2 != t>>2) {
				sum += game(r, t)
			}
		}
		return sum
	}
	now, least, best := 0, 0, slices.Clone(who)
	for k := range relabelRuns * relabelTries {
		i, j := d.Roll(len(who)), d.Roll(len(who))
		if level[i] == level[j] {
			continue
		}
		before := cost(i, j)
		level[i], level[j] = level[j], level[i]
		after := cost(i, j)
		if after-before > d.Nerve(hotRelabel*float64(relabelTries-k%relabelTries)/relabelTries) {
			level[i], level[j] = level[j], level[i]
			continue
		}
		who[i], who[j] = who[j], who[i]
		if now += after - before; now < least {
			least = now
			copy(best, who)
		}
	}
	for r := range b.shapes {
		row := b.row(r)
		for s, i := range row {
			row[s] = int32(best[i])
		}
	}
	b.recount()
}
