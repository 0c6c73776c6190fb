package main

import "math/bits"

// bench is who sits out in the rounds to be played, and what that weighs.
type bench struct {
	*rim
	softness
	outs        []uint64 // of each person: the rounds in which they sit out, one bit each
	least, most int      // how often each person may sit out
	price       int
	allowed     int // the price of sitting out as well as can be
}

// softness is what sitting out weighs while a wheel is searched: enough to be settled before long, and not
// so much that no way leads from one fair bench to another.
type softness struct {
	unfair int // for each person, times the square of what is too much or too little
	twice  int // each time that somebody sits out twice running
}

// newBench is a bench on which nobody ever sits.
func newBench(r *rim, soft softness) bench {
	b := bench{
		rim: r, softness: soft, outs: make([]uint64, r.people),
		least: r.leastOut(), most: r.mostOut(), allowed: soft.twice * r.mustTwice(),
	}
	for p := range b.outs {
		b.price += b.weight(p)
	}
	return b
}

// change makes somebody who plays in a base round sit out, or the other way round, and so everybody of
// the circle in their turn.
func (b *bench) change(base, person int) {
	circle := b.circle[person]
	for _, p := range circle {
		b.price -= b.weight(p)
	}
	for t, become := range b.image {
		if r := t*b.bases + base; r < b.rounds {
			b.outs[become[person]] ^= 1 << r
		}
	}
	for _, p := range circle {
		b.price += b.weight(p)
	}
}

// weight is what a person's sitting out weighs.
func (b *bench) weight(person int) int {
	outs := b.outs[person]
	times := bits.OnesCount64(outs)
	unfair := max(b.least-times, times-b.most, 0)
	return b.unfair*unfair*unfair + b.twice*bits.OnesCount64(outs&(outs>>1))
}
