package search

import (
	"testing"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestWhoIsLeftOverPlaysSingles where a court is free, at most three are out, and nobody needs that rest.
func TestWhoIsLeftOverPlaysSingles(t *testing.T) {
	for name, c := range map[string]struct {
		people int
		change func(*night.Problem)
		want   bool
	}{
		"two are out":               {6, func(*night.Problem) {}, true},
		"one is out":                {5, func(*night.Problem) {}, false},
		"three are out":             {7, func(*night.Problem) {}, true},
		"four are out":              {8, func(*night.Problem) {}, false},
		"set pairs":                 {6, func(p *night.Problem) { p.Format = night.Pairs }, false},
		"a rest after one game":     {6, func(p *night.Problem) { p.MaxRun = 1 }, false},
		"a rest after three":        {6, func(p *night.Problem) { p.MaxRun = 3 }, false},
		"they never meet":           {6, func(p *night.Problem) { p.NeverMeet = []night.Pair{{A: 4, B: 5}} }, false},
		"another two may":           {7, func(p *night.Problem) { p.NeverMeet = []night.Pair{{A: 4, B: 5}} }, true},
		"the free court is not his": {6, func(p *night.Problem) { p.People[5].Courts = []night.Court{0} }, false},
		"no court is free":          {6, func(p *night.Problem) { p.Courts = p.Courts[:1] }, false},
	} {
		p := nighttest.Club(c.people, 2, 1)
		c.change(&p)
		round := night.Round{Games: []night.Game{{Court: 0, A: night.Team{0, 1}, B: night.Team{2, 3}}}}
		for i := 4; i < c.people; i++ {
			round.Out = append(round.Out, night.Player(i))
		}
		g, got := singles(night.New(&p), 0, round)
		if got != c.want || got && (g.Court != 1 || !g.Singles()) {
			t.Errorf("%s: %v %+v, want %v", name, got, g, c.want)
		}
	}
}
