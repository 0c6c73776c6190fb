package main

import (
	"math"
	"math/rand/v2"
)

// anneal looks for an arrangement without faults by simulated annealing: it makes random moves,
// takes each back that makes things worse by more than chance allows, and lets chance allow less and
// less. It returns whether it got there.
func anneal(p *puzzle, rng *rand.Rand, moves int, hot, cold float64) bool {
	cooling := math.Pow(cold/hot, 1/float64(moves))
	temperature := hot
	for range moves {
		if p.cost == 0 {
			return true
		}
		before := p.cost
		done := p.move(rng)
		if worse := p.cost - before; worse > 0 && rng.Float64() >= math.Exp(-float64(worse)/temperature) {
			p.undo(done)
		}
		temperature *= cooling
	}
	return p.cost == 0
}
