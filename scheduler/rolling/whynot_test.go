package rolling

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night"
	"club/quadrille/scheduler/night/nighttest"
)

// TestWhyNot: who is passed over for having met the others costs just that more.
func TestWhyNot(t *testing.T) {
	p := nighttest.Club(6, 1, 0)
	r := Moment{People: p.People, Courts: p.Courts}
	for i := range night.Player(6) {
		r.Waiting = append(r.Waiting, Waiting{i, 10, 60, 3})
	}
	r.Waiting[0].Waited, r.Waiting[5].Waited = 11, 10
	// 1 has partnered and met 0 and 2 before, the others nobody
	for range 3 {
		r.Played = append(r.Played, night.Game{Court: 0, A: night.Team{0, 1}, B: night.Team{2, night.Nobody}})
	}
	taken, with, err := WhyNot(r, 1)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Contains(taken.Game.Players(), 0) || !slices.Contains(with.Game.Players(), 0) || !slices.Contains(with.Game.Players(), 1) {
		t.Fatalf("taken %v, with 1 %v: 0 has waited longest", taken.Game, with.Game)
	}
	if slices.Contains(taken.Game.Players(), 1) || taken.Met != 0 || with.Met != 3 || with.Partners != 0 || taken.CameOff != 0 || with.CameOff != 1 {
		t.Errorf("taken %+v, with 1 %+v", taken, with)
	}
	if with.Four < taken.Four+100*3*newPrices(&p).meeting/newPrices(&p).partner {
		t.Errorf("three meetings cost %v against %v", with.Four, taken.Four)
	}
	r.NeverMeet = []night.Pair{{A: 0, B: 1}}
	if again, _, err := WhyNot(r, 1); !errors.Is(err, ErrNoGameWith) || !slices.Contains(again.Game.Players(), 0) {
		t.Errorf("who is kept apart from the first: %v, %v", again, err)
	}
	r.Waiting = r.Waiting[:3]
	if _, _, err = WhyNot(r, 1); !errors.Is(err, ErrTooFew) {
		t.Errorf("three who wait: %v", err)
	}
}

// TestWhyNotKnowsWhatNextDoes: taken is what Next chooses, and of two games that cost differently the cheaper
// is called whenever Next has seen both.
func TestWhyNotKnowsWhatNextDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		people := rapid.IntRange(4, 24).Draw(t, "people")
		p := nighttest.Club(people, 2, 0)
		r := Moment{People: p.People, Courts: p.Courts, Seed: rapid.Uint64().Draw(t, "seed")}
		waited := 40.0
		for i := range people {
			waited -= float64(rapid.IntRange(0, 3).Draw(t, "less"))
			r.Waiting = append(r.Waiting, Waiting{night.Player(i), max(0, waited), 60, rapid.IntRange(0, 6).Draw(t, "games")})
		}
		for range rapid.IntRange(0, 30).Draw(t, "played") {
			a := night.Player(rapid.IntRange(0, people-4).Draw(t, "first of four"))
			r.Played = append(r.Played, night.Game{Court: 0, A: night.Team{a, a + 1}, B: night.Team{a + 2, a + 3}})
		}
		who := night.Player(rapid.IntRange(0, people-1).Draw(t, "who"))
		next, err := Next(r)
		if err != nil {
			t.Fatal(err)
		}
		taken, with, err := WhyNot(r, who)
		if err != nil {
			t.Fatal(err)
		}
		called := slices.Contains(next.Players(), who)
		if taken.Game != next || called != (with == taken) || !slices.Contains(with.Game.Players(), who) {
			t.Fatalf("next is %v; taken %v, with %d %v", next, taken, who, with)
		}
		c, _ := newCaller(r)
		window := c.window(c.line, windowWidth)
		if !slices.ContainsFunc(window, func(x call) bool { return x.who[0] == who }) {
			return
		}
		choices := c.choices(window, 1)
		seen := slices.IndexFunc(choices, func(x choice) bool { return x.game == with.Game })
		if seen < 0 {
			t.Fatalf("%v is no game that Next can choose", with.Game)
		}
		if cost := 100 * choices[seen].cost / c.prices.partner; math.Abs(cost-with.Wait-with.Four) > 1e-6 {
			t.Fatalf("%v costs %v, and Next takes it for %v", with.Game, with.Wait+with.Four, cost)
		}
		if seen < aheadChoices && with.Cost() < taken.Cost()-1e-6 {
			t.Fatalf("%v costs %v, and what is called %v", with.Game, with.Cost(), taken.Cost())
		}
	})
}

// BenchmarkWhyNot asks about the last but ten of 200 who wait.
func BenchmarkWhyNot(b *testing.B) {
	r := moment(200)
	for b.Loop() {
		if _, _, err := WhyNot(r, 190); err != nil && !errors.Is(err, ErrNoGameWith) {
			b.Fatal(err)
		}
	}
}
