package main

import (
	"math"
	"math/rand/v2"
)

// arrangement is something that random moves change and whose cost says how far it is from right.
type arrangement interface {
	// price is 0 when nothing is wrong.
	price() int
	// shake makes one random change; back undoes the last one.
	shake(rng *rand.Rand)
	back()
}

// anneal looks for an arrangement without faults by simulated annealing: it makes random moves and
// takes each back that makes things worse by more than chance allows. What chance allows falls from
// hot to cold, in units of price. It tells whether the price has come to 0.
func anneal(a arrangement, rng *rand.Rand, moves int, hot, cold float64) bool {
	cooling := math.Pow(cold/hot, 1/float64(moves))
	temperature := hot
	for range moves {
		before := a.price()
		if before == 0 {
			return true
		}
		a.shake(rng)
		if worse := a.price() - before; worse > 0 && rng.Float64() >= math.Exp(-float64(worse)/temperature) {
			a.back()
		}
		temperature *= cooling
	}
	return a.price() == 0
}
