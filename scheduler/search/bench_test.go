package search

import (
	"fmt"
	"testing"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// BenchmarkGrowth tries a fixed number of moves on ever larger nights: a move's time grows by what the
// memory of the machine costs, and not with the number of people.
func BenchmarkGrowth(b *testing.B) {
	const moves = 200_000
	for _, people := range []int{100, 200, 500, 1000} {
		b.Run(fmt.Sprint(people), func(b *testing.B) {
			p := nighttest.Club(people, people/5, 4)
			n := night.New(&p)
			s := &search{n: n, d: dice.New(1, 1), most: mostCourts(n), w: &measure.Strict}
			board := s.draw()
			for b.Loop() {
				a := newAnnealer(board, s.d, 0, 0)
				for range moves {
					a.try(hot)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/moves, "ns/move")
		})
	}
}
