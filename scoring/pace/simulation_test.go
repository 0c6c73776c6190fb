package pace_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

// played is what many games of the engine came to.
type played struct {
	games   int
	rallies float64
	winsA   int
	scores  map[scoring.Score]int
}

// play plays games rally by rally with drawn winners.
func play(r scoring.Rules, a, b float64, games int, seed uint64) played {
	rng := rand.New(rand.NewPCG(seed, 0))
	out := played{games: games, scores: map[scoring.Score]int{}}
	chances := [2]float64{a, b}
	for range games {
		s := scoring.Start(r, scoring.A)
		for !s.Done {
			won := s.Serving
			if rng.Float64() >= chances[won] {
				won = won.Other()
			}
			s = s.After(scoring.Rally{Won: won})
		}
		out.rallies += float64(s.Rally)
		out.scores[s.Score]++
		if s.Winner == scoring.A {
			out.winsA++
		}
	}
	return out
}

// widest is the number of standard errors that a mean of all these samples may be off. Over the few thousand
// comparisons of this file the largest to expect is about 3.7.
const widest = 5.5

func TestDistributionEqualsFrequenciesOfTheEngine(t *testing.T) {
	for i, c := range []struct {
		rules scoring.Rules
		a, b  float64
	}{
		{scoring.Rules{To: 11, WinBy: 2}, 0.44, 0.44},
		{scoring.Rules{To: 11, WinBy: 2, StartB: 3}, 0.5, 0.4},
		{scoring.Rules{To: 15, WinBy: 1}, 0.47, 0.41},
		{scoring.Rules{To: 11, WinBy: 2, Singles: true}, 0.44, 0.5},
		{scoring.Rules{Scoring: scoring.RallyScoring, To: 15, WinBy: 2, Cap: 17}, 0.44, 0.44},
		{scoring.Rules{Scoring: scoring.RallyScoring, To: 11, WinBy: 2, WinOnServe: true}, 0.42, 0.46},
		{scoring.Rules{Scoring: scoring.RallyScoring, To: 21, WinBy: 2, Singles: true}, 0.5, 0.45},
	} {
		t.Run(c.rules.String(), func(t *testing.T) {
			sample := play(c.rules, c.a, c.b, 30_000, uint64(i))
			compareWithSample(t, distribution(t, c.rules, c.a, c.b), sample)
		})
	}
}

func compareWithSample(t *testing.T, g pace.Game, sample played) {
	t.Helper()
	n := float64(sample.games)
	if z := (sample.rallies/n - g.Mean) / (g.SD / math.Sqrt(n)); math.Abs(z) > widest {
		t.Errorf("mean rallies %v, in %v games %v: %.1f standard errors off", g.Mean, n, sample.rallies/n, z)
	}
	off := func(count int, p float64) float64 { return (float64(count) - n*p) / math.Sqrt(n*p*(1-p)) }
	if z := off(sample.winsA, g.WinsA); math.Abs(z) > widest {
		t.Errorf("A wins with %v, in %v games %d times: %.1f standard errors off", g.WinsA, n, sample.winsA, z)
	}
	for score, count := range sample.scores {
		if o, ok := g.Of(score); !ok && count > 1 {
			t.Errorf("%v came up %d times and is not in the distribution", score, count)
		} else if z := off(count, o.P); ok && n*o.P > 10 && math.Abs(z) > widest {
			t.Errorf("%v has %v, in %v games %d: %.1f standard errors off", score, o.P, n, count, z)
		}
	}
}

// Whatever the rules and the strengths, the distribution is one, and every score in it is a final of the rules.
func TestDistributionsAreWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := scoring.Rules{
			To:      rapid.IntRange(1, 15).Draw(t, "to"),
			WinBy:   rapid.IntRange(1, 2).Draw(t, "win by"),
			Singles: rapid.Bool().Draw(t, "singles"),
		}
		if rapid.Bool().Draw(t, "rally") {
			r.Scoring, r.WinOnServe = scoring.RallyScoring, rapid.Bool().Draw(t, "win on serve")
		}
		if rapid.Bool().Draw(t, "capped") {
			r.Cap = r.To + rapid.IntRange(0, 3).Draw(t, "beyond")
		}
		a, b := rapid.Float64Range(0.2, 0.8).Draw(t, "a"), rapid.Float64Range(0.2, 0.8).Draw(t, "b")
		g, err := pace.Distribution(r, a, b)
		if err != nil {
			t.Fatal(err)
		}
		total, mean := 0.0, 0.0
		for _, o := range g.Outcomes {
			if _, err := r.Final(o.Score.A, o.Score.B, scoring.Played); err != nil {
				t.Fatal(err)
			}
			total += o.P
			mean += o.P * o.Rallies
		}
		if math.Abs(total-1) > 1e-6 || math.Abs(mean-g.Mean) > 1e-4 {
			t.Fatalf("the scores sum to %v and their rallies to %v of %v", total, mean, g.Mean)
		}
		if low, high := g.Quantile(0.1), g.Quantile(0.9); low > high || float64(high) < g.Mean/2 {
			t.Fatalf("quantiles %d and %d around %v", low, high, g.Mean)
		}
	})
}

// One rally on, the mean of what remains is what it was less the rally, weighted by who wins it.
func TestRemainingFollowsTheGame(t *testing.T) {
	s := scoring.Start(scoring.Rules{To: 11, WinBy: 2, Cap: 13}, scoring.A)
	rng := rand.New(rand.NewPCG(7, 7))
	remaining := func(s scoring.State) pace.Game {
		g, err := pace.Remaining(s, 0.45, 0.4)
		if err != nil {
			t.Fatal(err)
		}
		return g
	}
	for !s.Done {
		p := [2]float64{0.45, 0.4}[s.Serving]
		won := s.After(scoring.Rally{Won: s.Serving})
		lost := s.After(scoring.Rally{Won: s.Serving.Other()})
		near(t, s.Call(), remaining(s).Mean, 1+p*remaining(won).Mean+(1-p)*remaining(lost).Mean, 1e-11)
		near(t, s.Call(), remaining(s).WinsA, p*remaining(won).WinsA+(1-p)*remaining(lost).WinsA, 1e-12)
		if s = won; rng.Float64() > p {
			s = lost
		}
	}
}

func TestServeChanceIsLearnedFromCountedRallies(t *testing.T) {
	near(t, "nothing counted", pace.ServeChance(0, 0), pace.DefaultServeWins, 1e-15)
	rng := rand.New(rand.NewPCG(1, 2))
	won, served := 0, 0
	for range 50 {
		rallies := make([]scoring.Rally, 60)
		s := scoring.Start(scoring.Rules{To: 11, WinBy: 2}, scoring.B)
		for i := range rallies {
			rallies[i].Won = s.Serving
			if rng.Float64() > 0.5 {
				rallies[i].Won = s.Serving.Other()
			}
			s = s.After(rallies[i])
		}
		w, n := pace.CountServes(s.Rules(), scoring.B, rallies)
		if n != s.Rally {
			t.Fatalf("%d of %d rallies are counted", n, s.Rally)
		}
		won, served = won+w, served+n
	}
	near(t, "after 50 games", pace.ServeChance(won, served), 0.5, 0.03)
}
