package nighttest

import (
	"fmt"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night"
)

// AnyProblem draws a night with arrivals, departures, courts that open and close, couples, keep-aparts,
// walls, bands, levels and a history that an earlier plan made.
func AnyProblem(t *rapid.T) night.Problem {
	p := night.Problem{
		Format:          rapid.SampledFrom([]night.Format{night.Rotating, night.Rotating, night.Mixed, night.Pairs}).Draw(t, "format"),
		Rounds:          rapid.IntRange(1, 6).Draw(t, "rounds"),
		MaxRun:          rapid.SampledFrom([]int{0, 0, 1, 2, 3}).Draw(t, "most running"),
		LevelLimit:      rapid.SampledFrom([]float64{0, 0, 0.7}).Draw(t, "limit"),
		LeftoverSingles: rapid.Bool().Draw(t, "singles"),
		Seed:            rapid.Uint64().Draw(t, "seed"),
	}
	people := rapid.IntRange(0, 22).Draw(t, "people")
	courts := rapid.IntRange(0, 5).Draw(t, "courts")
	for c := range courts {
		spec := night.CourtSpec{Name: fmt.Sprint(c + 1)}
		if rapid.IntRange(0, 4).Draw(t, "court kind") == 0 {
			spec.Open = rapid.IntRange(0, 2).Draw(t, "opens")
			spec.Close = rapid.IntRange(0, 4).Draw(t, "closes")
			spec.MinLevel = rapid.SampledFrom([]float64{0, 3}).Draw(t, "band")
		}
		p.Courts = append(p.Courts, spec)
	}
	for i := range people {
		person := night.Person{
			Name:  fmt.Sprintf("P%02d", i+1),
			Group: rapid.SampledFrom([]string{"x", "y"}).Draw(t, "group"),
			Level: rapid.SampledFrom([]float64{0, 2.5, 3, 3.5, 4.5}).Draw(t, "level"),
		}
		switch rapid.IntRange(0, 7).Draw(t, "presence") {
		case 0:
			person.Arrive = rapid.IntRange(1, 3).Draw(t, "arrives")
		case 1:
			person.Leave = rapid.IntRange(1, 4).Draw(t, "leaves")
		case 2:
			if courts > 0 {
				person.Courts = []night.Court{night.Court(rapid.IntRange(0, courts-1).Draw(t, "own court"))}
			}
		}
		p.People = append(p.People, person)
	}
	if people > 1 {
		p.Together = anyPairs(t, people, "together", true)
		p.NeverPartner = anyPairs(t, people, "never partner", false)
		p.NeverMeet = anyPairs(t, people, "never meet", false)
	}
	return p
}

func anyPairs(t *rapid.T, people int, what string, times bool) []night.Pair {
	var pairs []night.Pair
	for range rapid.SampledFrom([]int{0, 0, 1, 3}).Draw(t, what) {
		pair := night.Pair{
			A: night.Player(rapid.IntRange(0, people-1).Draw(t, "one")),
			B: night.Player(rapid.IntRange(0, people-1).Draw(t, "other")),
		}
		if times {
			pair.Times = rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "times")
		}
		pairs = append(pairs, pair)
	}
	return pairs
}
