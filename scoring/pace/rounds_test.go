package pace_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

// taught is a clock that has learned from games of about 14 minutes.
func taught(t *testing.T) pace.Clock {
	t.Helper()
	clock, err := pace.NewClock(15)
	if err != nil {
		t.Fatal(err)
	}
	for _, minutes := range []float64{12, 17, 13, 14.5, 11, 16, 15, 13.5} {
		clock = clock.After(minutes)
	}
	return clock
}

// nights draws whole nights from the clock and returns the share in which the rounds were over in time: the
// spread and the mean of the night first, then every game.
func nights(c pace.Clock, h pace.Hall, rounds, count int) float64 {
	rng := rand.New(rand.NewPCG(3, uint64(rounds)))
	intime := 0
	for range count {
		sigma := math.Sqrt(c.Beta / gamma(rng, c.Alpha))
		mu := c.M + sigma*rng.NormFloat64()/math.Sqrt(c.Kappa)
		total := float64(rounds-1) * h.Change
		for range rounds {
			longest := 0.0
			for range h.Courts {
				longest = max(longest, math.Exp(mu+sigma*rng.NormFloat64()))
			}
			total += longest
		}
		if total <= h.Left {
			intime++
		}
	}
	return float64(intime) / float64(count)
}

// gamma draws from the gamma distribution of a shape above 1 and rate 1 (G. Marsaglia and W. W. Tsang, ACM
// Transactions on Mathematical Software 26, 2000).
func gamma(rng *rand.Rand, shape float64) float64 {
	d := shape - 1.0/3
	for {
		x := rng.NormFloat64()
		v := math.Pow(1+x/math.Sqrt(9*d), 3)
		if v > 0 && math.Log(rng.Float64()) < x*x/2+d-d*v+d*math.Log(v) {
			return d * v
		}
	}
}

func TestChanceThatRoundsFitIsThatOfDrawnNights(t *testing.T) {
	clock := taught(t)
	for _, h := range []pace.Hall{
		{Courts: 1, Change: 2, Left: 120},
		{Courts: 4, Change: 3, Left: 120},
		{Courts: 12, Change: 0, Left: 180},
	} {
		for rounds := 1; rounds <= 9; rounds++ {
			got, want := clock.FitChance(h, rounds), nights(clock, h, rounds, 6000)
			if math.Abs(got-want) > 0.025 {
				t.Errorf("%d rounds on %d courts in %v minutes: chance %.3f, drawn %.3f", rounds, h.Courts, h.Left, got, want)
			}
		}
	}
}

func TestRoundsThatFit(t *testing.T) {
	clock := taught(t)
	h := pace.Hall{Courts: 4, Change: 3, Left: 120}
	even, likely, sure := clock.Rounds(h, 0.5), clock.Rounds(h, 0.8), clock.Rounds(h, 0.95)
	if even < likely || likely < sure || sure < 1 {
		t.Fatalf("%d, %d and %d rounds fit at 50, 80 and 95 %%", even, likely, sure)
	}
	for confidence, rounds := range map[float64]int{0.5: even, 0.8: likely, 0.95: sure} {
		if clock.FitChance(h, rounds) < confidence || clock.FitChance(h, rounds+1) >= confidence {
			t.Errorf("%d rounds at %v: chances %v and %v", rounds, confidence, clock.FitChance(h, rounds), clock.FitChance(h, rounds+1))
		}
	}
	if got := clock.Rounds(pace.Hall{Courts: 4, Left: 3}, 0.5); got != 0 {
		t.Errorf("%d rounds fit in three minutes", got)
	}
	if got := clock.FitChance(h, 0); got != 1 {
		t.Errorf("no round at all fits with a chance of %v", got)
	}
}

func TestMoreCourtsMakeLongerRounds(t *testing.T) {
	clock := taught(t)
	last := 1.0
	for courts := 1; courts <= 16; courts *= 2 {
		chance := clock.FitChance(pace.Hall{Courts: courts, Change: 2, Left: 110}, 6)
		if chance >= last {
			t.Errorf("six rounds on %d courts fit with %v, on fewer with %v", courts, chance, last)
		}
		last = chance
	}
}

func TestSuggestions(t *testing.T) {
	clock := taught(t)
	now := scoring.Rules{To: 11, WinBy: 2, Cap: 13}
	for _, c := range []struct {
		name    string
		left    float64
		people  int
		want    string // the start of the rules that are suggested
		options int
	}{
		{"plenty of time", 240, 16, "side-out to 11, win by 2, cap 13", 4},
		{"a little short", 114, 16, "side-out to 9, win by 2, cap 11", 4},
		{"short", 90, 16, "side-out to 7, win by 2, cap 9", 4},
		{"too short for any target", 66, 16, "side-out to 11, win by 2, cap 13, 8 minutes", 4},
		{"more people take more rounds", 114, 20, "side-out to 11, win by 2, cap 13, 11 minutes", 4},
		{"no time at all", 20, 16, "", 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := pace.Wish{Hall: pace.Hall{Courts: 4, Change: 3, Left: c.left}, People: c.people, Games: 6}
			options, best, err := clock.Suggest(w, now)
			if err != nil || len(options) != c.options {
				t.Fatalf("%d options, %v", len(options), err)
			}
			got := ""
			if best >= 0 {
				got = options[best].Rules.String()
			}
			if got != c.want {
				t.Errorf("%q is suggested, want %q; options %+v", got, c.want, options)
			}
			if !slices.IsSortedFunc(options, func(x, y pace.Option) int { return int(1000 * (x.Chance - y.Chance)) }) {
				t.Errorf("shorter games are less certain: %+v", options)
			}
		})
	}
}

func TestWishesThatCannotBe(t *testing.T) {
	hall := pace.Hall{Courts: 4, Change: 3, Left: 120}
	rules := scoring.Rules{To: 11, WinBy: 2}
	for name, c := range map[string]struct {
		wish   pace.Wish
		rules  scoring.Rules
		reason string
	}{
		"three people":        {pace.Wish{Hall: hall, People: 3, Games: 6}, rules, "takes 4"},
		"one in singles":      {pace.Wish{Hall: hall, People: 1, Games: 6}, scoring.Rules{To: 11, WinBy: 2, Singles: true}, "takes 2"},
		"no games":            {pace.Wish{Hall: hall, People: 16}, rules, "at least 1 game"},
		"no court":            {pace.Wish{Hall: pace.Hall{Left: 20}, People: 16, Games: 6}, rules, "need a court"},
		"a change of no time": {pace.Wish{Hall: pace.Hall{Courts: 1, Change: -1}, People: 16, Games: 6}, rules, "change of courts"},
		"no closing":          {pace.Wish{Hall: pace.Hall{Courts: 1, Left: math.NaN()}, People: 16, Games: 6}, rules, "until closing"},
		"no rules":            {pace.Wish{Hall: hall, People: 16, Games: 6}, scoring.Rules{}, "11 is usual"},
		"a chance above one":  {pace.Wish{Hall: hall, People: 16, Games: 6, Serve: 2}, rules, "0.44 is usual"},
	} {
		if _, _, err := taught(t).Suggest(c.wish, c.rules); err == nil || !strings.Contains(err.Error(), c.reason) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestWaiting(t *testing.T) {
	clock := taught(t)
	running := []float64{12, 3, 8}
	next := clock.Wait(running, 0, 2, 0.5)
	near(t, "the oldest game ends first", next, clock.Remaining(12, 0.5)+2, 1e-12)
	second := clock.Wait(running, 1, 2, 0.5)
	near(t, "then the next", second, clock.Remaining(8, 0.5)+2, 1e-12)
	fourth := clock.Wait(running, 3, 2, 0.5)
	near(t, "then a court for the second time", fourth, next+clock.Median()+2, 1e-12)
	if early, late := clock.Wait(running, 2, 2, 0.2), clock.Wait(running, 2, 2, 0.8); early >= late {
		t.Errorf("between %v and %v", early, late)
	}
	if got := clock.Wait(nil, 2, 2, 0.5); got != 0 {
		t.Errorf("without courts the wait is %v", got)
	}
}
