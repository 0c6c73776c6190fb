package main

import (
	"fmt"
	"math/bits"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/design"
)

// drawWheel draws a night, one of its shapes, and a wheel after some random moves.
func drawWheel(t *rapid.T) (*wheel, *rand.Rand) {
	n := wheelNight{people: rapid.IntRange(5, 24).Draw(t, "people"), rounds: rapid.IntRange(2, 12).Draw(t, "rounds")}
	n.tables = rapid.IntRange(1, n.people/4).Draw(t, "tables")
	shapes := n.shapes(mostLeftOver)
	if len(shapes) == 0 {
		t.Skip("no shape fits")
	}
	shape := rapid.SampledFrom(shapes).Draw(t, "shape")
	rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
	w := newWheel(newRim(n, shape), softnesses[0], &bestWheel{}, rng)
	for range rapid.IntRange(0, 60).Draw(t, "moves") {
		w.shake(rng)
		if rng.IntN(3) == 0 {
			w.back()
		}
	}
	return w, rng
}

// allRounds is the plan of the wheel with the rounds left over.
func allRounds(w *wheel) [][]design.Table {
	s := w.starter()
	s.Rounds = w.order * w.rim.bases
	return s.Plan()
}

// repeats counts the meetings of some rounds pair by pair: what they weigh and how many repeat.
func repeats(people int, rounds [][]design.Table) (weight, meetings int) {
	type pair struct{ p, q int }
	partners, opponents := make(map[pair]int), make(map[pair]int)
	for _, round := range rounds {
		for _, t := range round {
			for i, p := range t {
				for j, q := range t {
					switch {
					case p <= q:
					case i^j == 1:
						partners[pair{p, q}]++
					default:
						opponents[pair{p, q}]++
					}
				}
			}
		}
	}
	for p := range people {
		for q := range p {
			a, b := partners[pair{p, q}], opponents[pair{p, q}]
			weight += 64*(a*(a-1)/2) + 16*((a+b)*(a+b-1)/2) + 2*(b*(b-1)/2)
			meetings += (a + b) * (a + b - 1) / 2
		}
	}
	return weight, meetings
}

// TestCountsOfOrbitsEqualRecount checks what moves keep up to date against all rounds written out.
func TestCountsOfOrbitsEqualRecount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, _ := drawWheel(t)
		weight, meetings := repeats(w.people, allRounds(w))
		if w.play != weight || w.meetings != meetings {
			t.Errorf("weight %d and %d repeated meetings, recounted %d and %d", w.play, w.meetings, weight, meetings)
		}
		_, played := repeats(w.people, w.starter().Plan())
		left := w.order*w.rim.bases - w.rounds
		if got := w.meetings - w.leftOver(); got > played || left < 2 && got < played {
			t.Errorf("%d meetings repeat in the rounds played, taken for %d with %d rounds left over", played, got, left)
		}
	})
}

// TestBenchEqualsRecount checks who sits out when, and the price of it.
func TestBenchEqualsRecount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, _ := drawWheel(t)
		outs := make([]uint64, w.people)
		for r, round := range w.starter().Plan() {
			for p := range outs {
				outs[p] |= 1 << r
			}
			for _, table := range round {
				for _, p := range table {
					outs[p] &^= 1 << r
				}
			}
		}
		price := 0
		for p, rounds := range outs {
			if w.bench.outs[p] != rounds {
				t.Errorf("person %d sits out in rounds %b, noted %b", p, rounds, w.bench.outs[p])
			}
			n := bits.OnesCount64(rounds)
			switch least, most := w.leastOut(), w.mostOut(); {
			case n < least:
				price += 24 * (least - n) * (least - n)
			case n > most:
				price += 24 * (n - most) * (n - most)
			}
			price += 20 * bits.OnesCount64(rounds&(rounds<<1))
		}
		if w.bench.price != price {
			t.Errorf("price %d, recounted %d", w.bench.price, price)
		}
	})
}

// TestMovesAreTakenBack checks that back leaves everything as it was.
func TestMovesAreTakenBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, rng := drawWheel(t)
		before, play, price, meetings := w.starter().Text(), w.play, w.bench.price, w.meetings
		w.shake(rng)
		w.back()
		if w.starter().Text() != before || w.play != play || w.bench.price != price || w.meetings != meetings {
			t.Errorf("%s became %s", before, w.starter().Text())
		}
	})
}

// BenchmarkAnneal tells the time of one move.
func BenchmarkAnneal(b *testing.B) {
	n := wheelNight{45, 10, 15}
	for _, s := range n.shapes(0) {
		rng := rand.New(rand.NewPCG(1, 0))
		w := newWheel(newRim(n, s), softnesses[0], &bestWheel{target: -1}, rng)
		b.Run(fmt.Sprintf("order%d", s.order), func(b *testing.B) {
			order := float64(s.order)
			anneal(w, rng, b.N, heats[0]*order, calm*order)
		})
	}
}
