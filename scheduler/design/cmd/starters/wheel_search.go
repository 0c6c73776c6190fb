package main

import (
	"fmt"
	"io"
	"math/rand/v2"
)

// searchWheel prints the best wheel that was found.
func (o options) searchWheel(out io.Writer) error {
	n, err := parseWheelNight(o.wheel)
	if err != nil {
		return err
	}
	best := o.bestWheel(n)
	if !best.found {
		return fmt.Errorf("no wheel for %d people, %d tables and %d rounds in %d tries; try more moves or another seed",
			n.people, n.tables, n.rounds, o.tries)
	}
	_, err = io.WriteString(out, best.starter.Text())
	return err
}

// An anneal starts at one of these heats and ends at calm, all temperatures for each turn of the wheel.
// No heat and no softness does best on all nights, and so each is tried with each.
var (
	heats      = [...]float64{5, 7}
	softnesses = [...]softness{{24, 20}, {48, 40}, {14, 12}}
)

const calm = 1.8

// bestWheel anneals every shape of wheel in each try, until few enough meetings repeat. If some must, no
// round is left over: who repeats there would cost as much as elsewhere.
func (o options) bestWheel(n wheelNight) *bestWheel {
	best := &bestWheel{target: max(o.meetings, n.mustMeet())}
	leftOver := 0
	if best.target == 0 {
		leftOver = mostLeftOver
	}
	var rims []*rim
	for _, s := range n.shapes(leftOver) {
		rims = append(rims, newRim(n, s))
	}
	for try := range o.tries {
		for k, r := range rims {
			rng := rand.New(rand.NewPCG(o.seed+uint64(try), uint64(k)))
			o.annealWheels(r, best, rng)
			if best.enough() {
				return best
			}
		}
	}
	return best
}

// annealWheels anneals wheels of one shape, one for each heat and softness.
func (o options) annealWheels(r *rim, best *bestWheel, rng *rand.Rand) {
	order := float64(r.order)
	for _, soft := range softnesses {
		for _, hot := range heats {
			w := newWheel(r, soft, best, rng)
			anneal(w, rng, o.moves, hot*order, calm*order)
			w.look()
		}
	}
}
