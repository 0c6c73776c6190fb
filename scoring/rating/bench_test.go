package rating_test

import (
	"math/rand/v2"
	"testing"

	"club/quadrille/scoring/rating"
)

// season is 50 nights of 100 games among 120 people; mixed makes every team one of each half, whose designs
// never become whole and so cost the most.
func season(mixed bool) []rating.Game[int] {
	rng := rand.New(rand.NewPCG(50, 100))
	var games []rating.Game[int]
	for night := range 50 {
		for range 100 {
			p := rng.Perm(120)[:4]
			if mixed {
				x, y := rng.Perm(60), rng.Perm(60)
				p = []int{x[0], 60 + y[0], x[1], 60 + y[1]}
			}
			games = append(games, rating.Game[int]{A: p[:2], B: p[2:], Share: float64(rng.IntN(2)), Week: float64(night)})
		}
	}
	return games
}

func BenchmarkSeason(b *testing.B) {
	for name, mixed := range map[string]bool{"rotating": false, "mixed": true} {
		games := season(mixed)
		m := rating.Default()
		m.Growth = rating.SettledGrowth
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := rating.Replay(m, nil, games); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkUpdate(b *testing.B) {
	m := rating.Default()
	people := []rating.Rating{m.New(), m.New(), m.New(), m.New()}
	b.ReportAllocs()
	for b.Loop() {
		m.Update(people[:2], people[2:], 0.5)
	}
}
