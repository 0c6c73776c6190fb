package pace_test

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

type durations struct {
	NIG struct {
		Prior      pace.Clock
		Durations  []float64
		Sequential []pace.Clock
		Batch      pace.Clock
		Predictive struct {
			Quantiles map[string]float64 `json:"quantiles_minutes"`
		}
	} `json:"lognormal_nig"`
	Remaining struct {
		Mu, Sigma float64
		Rows      []struct {
			Elapsed float64
			Mean    float64 `json:"mean_total"`
			Median  float64 `json:"median_total"`
		}
	} `json:"lognormal_remaining"`
}

func sameClock(t *testing.T, got, want pace.Clock) {
	t.Helper()
	near(t, "m", got.M, want.M, 1e-14)
	near(t, "kappa", got.Kappa, want.Kappa, 1e-14)
	near(t, "alpha", got.Alpha, want.Alpha, 1e-14)
	near(t, "beta", got.Beta, want.Beta, 1e-14)
}

// Gelman and others, Bayesian Data Analysis, chapter 3.3, with numbers from outside.
func TestClockLearnsAsTheTextbookSays(t *testing.T) {
	var file durations
	readJSON(t, "duration.json", &file)
	clock, err := pace.NewClock(14)
	if err != nil {
		t.Fatal(err)
	}
	sameClock(t, clock, file.NIG.Prior)
	for i, minutes := range file.NIG.Durations {
		clock = clock.After(minutes)
		sameClock(t, clock, file.NIG.Sequential[i])
	}
	sameClock(t, clock, file.NIG.Batch)
	for text, want := range file.NIG.Predictive.Quantiles {
		q, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		// The source inverted the distribution by a search that was good to eight digits: its median is not
		// quite exp(m).
		near(t, "quantile "+text, clock.Quantile(q), want, 2e-8)
		near(t, "chance at "+text, clock.Chance(want), q, 2e-8)
	}
}

func TestLongerRunningGamesEndLater(t *testing.T) {
	var file durations
	readJSON(t, "duration.json", &file)
	l := pace.Lognormal{Mu: file.Remaining.Mu, Sigma: file.Remaining.Sigma}
	for _, row := range file.Remaining.Rows {
		near(t, "mean", l.MeanBeyond(row.Elapsed), row.Mean, 1e-10)
		near(t, "median", l.MedianBeyond(row.Elapsed), row.Median, 1e-10)
	}
}

func TestClocksThatCannotBe(t *testing.T) {
	for _, minutes := range []float64{0, -3, math.NaN(), math.Inf(1)} {
		if _, err := pace.NewClock(minutes); err == nil {
			t.Errorf("a guess of %v minutes is accepted", minutes)
		}
		clock, _ := pace.NewClock(14)
		if clock.After(minutes) != clock {
			t.Errorf("a game of %v minutes was learned from", minutes)
		}
	}
}

func TestClockProperties(t *testing.T) {
	minutes := rapid.Float64Range(2, 60)
	rapid.Check(t, func(t *rapid.T) {
		clock, err := pace.NewClock(minutes.Draw(t, "guess"))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range rapid.SliceOfN(minutes, 0, 40).Draw(t, "games") {
			clock = clock.After(m)
		}
		q := rapid.Float64Range(0.01, 0.99).Draw(t, "q")
		if got := clock.Chance(clock.Quantile(q)); math.Abs(got-q) > 1e-9 {
			t.Fatalf("the chance of the quantile %v is %v", q, got)
		}
		elapsed := rapid.Float64Range(0, 40).Draw(t, "elapsed")
		left := clock.Remaining(elapsed, q)
		if left < 0 || math.Abs(clock.Remaining(0, q)-clock.Quantile(q)) > 1e-6*clock.Quantile(q) {
			t.Fatalf("%v minutes remain after %v", left, elapsed)
		}
		if elapsed+left+1e-6 < clock.Remaining(0, q) {
			t.Fatalf("a game that ran for %v minutes ends before one that has not begun", elapsed)
		}
	})
}

func TestWhatWasLearnedServesForAnotherTarget(t *testing.T) {
	eleven := distribution(t, scoring.Rules{To: 11, WinBy: 2}, 0.44, 0.44)
	seven := distribution(t, scoring.Rules{To: 7, WinBy: 2}, 0.44, 0.44)
	clock, _ := pace.NewClock(14)
	near(t, "median to 7", clock.For(eleven, seven).Median(), 14*seven.Mean/eleven.Mean, 1e-12)
	near(t, "and back", clock.For(eleven, seven).For(seven, eleven).Median(), 14, 1e-12)
}
