// Package dice is the chance that plans are drawn by: seeded, and the same on every machine.
package dice

import (
	"math"
	"math/bits"
)

// Dice is a seeded source of chance: a Weyl sequence whose numbers are multiplied with themselves,
// after Wang Yi's wyrand. Equal seeds give equal rolls on every machine.
type Dice struct{ state uint64 }

// New returns the dice of a seed; streams of one seed differ.
func New(seed, stream uint64) *Dice {
	d := &Dice{seed}
	d.state = d.Next() ^ stream
	d.state = d.Next()
	return d
}

// Clone returns dice that will roll the same.
func (d *Dice) Clone() *Dice { return &Dice{d.state} }

// Next returns 64 random bits.
func (d *Dice) Next() uint64 {
	d.state += 0xa0761d6478bd642f
	hi, lo := bits.Mul64(d.state, d.state^0xe7037ed1a0b428db)
	return hi ^ lo
}

// Roll returns a number from 0 to k-1. k must be positive. The bias of the multiplication is below
// k/2^64, which no plan can show.
func (d *Dice) Roll(k int) int {
	hi, _ := bits.Mul64(d.Next(), uint64(k))
	return int(hi)
}

// Shuffle puts the list into a random order.
func Shuffle[T any](d *Dice, list []T) {
	for i := len(list) - 1; i > 0; i-- {
		j := d.Roll(i + 1)
		list[i], list[j] = list[j], list[i]
	}
}

// Nerve returns, for a temperature, by how much a change may worsen the plan and still be taken:
// an exponential variate, which is Metropolis' rule turned around (J. Chem. Phys. 21 (1953)
// 1087-1092).
func (d *Dice) Nerve(temperature float64) int {
	return int(temperature * exponentials[d.Next()>>(64-exponentialBits)])
}

const exponentialBits = 10

// exponentials holds the quantiles of the exponential distribution, so that a roll costs one look
// instead of a logarithm; rounded, so that machines whose logarithms differ in the last bit agree.
var exponentials = func() (table [1 << exponentialBits]float64) {
	for i := range table {
		table[i] = math.Round(-1024*math.Log((float64(i)+0.5)/(1<<exponentialBits))) / 1024
	}
	return table
}()
