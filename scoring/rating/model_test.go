package rating_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scoring/rating"
)

func TestHalfMargin(t *testing.T) {
	var file struct {
		HalfMargin struct {
			Examples []struct {
				Own, Other, Target int
				Win, S             float64
			}
		} `json:"half_margin_score"`
	}
	readJSON(t, "design.json", &file)
	half := rating.Default()
	half.HalfMargin = true
	for _, c := range file.HalfMargin.Examples {
		near(t, "with the margin", half.Share(c.Own, c.Other, c.Target), c.S, 1e-15)
		near(t, "without", rating.Default().Share(c.Own, c.Other, c.Target), c.Win, 0)
		near(t, "both sides together", half.Share(c.Own, c.Other, c.Target)+half.Share(c.Other, c.Own, c.Target), 1, 1e-15)
	}
	if len(file.HalfMargin.Examples) == 0 {
		t.Fatal("no examples")
	}
	near(t, "more than the target", half.Share(21, 5, 11), 1, 0)
	near(t, "and its other side", half.Share(5, 21, 11), 0, 0)
	near(t, "a leader who retires", half.Settled(0, 10, 5, 11), (0.5+5.0/22)/2, 1e-15)
}

func TestGrowthBetweenNights(t *testing.T) {
	m := rating.Default()
	m.Growth = rating.SettledGrowth
	settled := rating.Rating{Mu: 30, Sigma: 3}
	near(t, "after two years", m.Grown(settled, 104).Sigma, m.Sigma, 5e-3) // the growth is rounded to three digits
	near(t, "after ten", m.Grown(settled, 520).Sigma, m.Sigma, 0)
	near(t, "after a week", m.Grown(settled, 1).Sigma, math.Sqrt(9+rating.SettledGrowth*rating.SettledGrowth), 1e-15)
	near(t, "after four weeks, as after two and two", m.Grown(settled, 4).Sigma, m.Grown(m.Grown(settled, 2), 2).Sigma, 1e-12)
	if unsure := (rating.Rating{Mu: 30, Sigma: 12}); m.Grown(unsure, 9) != unsure {
		t.Errorf("somebody less sure than a newcomer became %v", m.Grown(unsure, 9))
	}
	if m.Grown(settled, 0) != settled || m.Grown(settled, -1) != settled || rating.Default().Grown(settled, 9) != settled {
		t.Error("a rating grew in no time or without growth")
	}
	if got := m.Grown(settled, 50); got.Mu != settled.Mu {
		t.Errorf("time away moved the mean to %v", got.Mu)
	}
}

func TestGrowthCountsTheWeeksAway(t *testing.T) {
	m := rating.Default()
	m.Growth = rating.SettledGrowth
	night := func(week float64) rating.Game[string] {
		return rating.Game[string]{A: []string{"Ann", "Art"}, B: []string{"Bea", "Bob"}, Share: 1, Week: week}
	}
	sigma := func(games ...rating.Game[string]) float64 {
		table, err := rating.Replay(m, nil, games)
		if err != nil {
			t.Fatal(err)
		}
		p, _ := table.Of("Ann")
		return p.Sigma
	}
	same, away := sigma(night(0), night(0)), sigma(night(0), night(10))
	if same >= away {
		t.Errorf("the deviation is %v after one night and %v after ten weeks", same, away)
	}
	// Three nights a week apart grow by a week each, not by all weeks since the first.
	grown := rating.Rating{Mu: m.Mu, Sigma: m.Sigma}
	for _, w := range []float64{0, 1, 1} {
		team := func() []rating.Rating { return []rating.Rating{m.Grown(grown, w), m.Grown(grown, w)} }
		a := team()
		m.Update(a, team(), 0.5)
		grown = a[0]
	}
	even := func(week float64) rating.Game[string] {
		g := night(week)
		g.Share = 0.5
		return g
	}
	near(t, "three nights in a row", sigma(even(0), even(1), even(2)), grown.Sigma, 1e-12)
	near(t, "counted from any week", sigma(night(100), night(110)), away, 1e-15)
}

// Who is away grows less sure up to the newest game, also without one of their own; who plays does not.
func TestGrowthGoesOnForThoseWhoStayAway(t *testing.T) {
	m := rating.Default()
	m.Growth = rating.SettledGrowth
	night := func(week float64, a1, a2, b1, b2 string) rating.Game[string] {
		return rating.Game[string]{A: []string{a1, a2}, B: []string{b1, b2}, Share: 1, Week: week}
	}
	table := func(games ...rating.Game[string]) rating.Table[string] {
		table, err := rating.Replay(m, nil, games)
		if err != nil {
			t.Fatal(err)
		}
		return table
	}
	first := night(0, "Ann", "Art", "Bea", "Bob")
	then, _ := table(first).Of("Ann")
	now, _ := table(first, night(3, "Bea", "Bob", "Cid", "Cora")).Of("Ann")
	if want := m.Grown(then.Rating, 3); now.Rating != want {
		t.Errorf("Ann, away for three weeks, has %v and not %v", now.Rating, want)
	}
	back, _ := table(first, night(3, "Bea", "Bob", "Cid", "Cora"), night(3, "Ann", "Art", "Cid", "Cora")).Of("Ann")
	if back.Sigma >= now.Sigma {
		t.Errorf("a game on the newest day makes Ann no surer: %v", back)
	}
	m.Growth = 0
	if still, _ := table(first, night(3, "Bea", "Bob", "Cid", "Cora")).Of("Ann"); still.Rating != then.Rating {
		t.Errorf("without growth Ann went from %v to %v", then.Rating, still.Rating)
	}
}

func TestStatedLevels(t *testing.T) {
	m := rating.Default()
	if m.Level(3.0) != m.New() {
		t.Errorf("level 3.0 starts at %v", m.Level(3.0))
	}
	near(t, "half a level", m.Level(4.0).Mu-m.Level(3.5).Mu, m.Beta, 1e-12)
	table, err := rating.Replay(m, map[string]rating.Rating{"Ann": m.Level(4.5)},
		[]rating.Game[string]{{A: []string{"Ann"}, B: []string{"Bea"}, Share: 0.5}})
	if err != nil {
		t.Fatal(err)
	}
	if ann, _ := table.Of("Ann"); ann.Mu >= m.Level(4.5).Mu || ann.Mu <= m.Mu {
		t.Errorf("a draw moved Ann from %v to %v", m.Level(4.5).Mu, ann.Mu)
	}
}

func TestIntervals(t *testing.T) {
	low, high := rating.Rating{Mu: 25, Sigma: 2}.Interval()
	near(t, "low", low, 25-2*1.959964, 1e-12)
	near(t, "high", high, 25+2*1.959964, 1e-12)
	near(t, "equal people", rating.Rating{Mu: 25, Sigma: 2}.Better(rating.Rating{Mu: 25, Sigma: 3}), 0.5, 1e-15)
	near(t, "one deviation", rating.Rating{Mu: 30, Sigma: 3}.Better(rating.Rating{Mu: 25, Sigma: 4}), 0.841344746, 1e-9)
}

// drawTeam draws the ratings of one or two people.
func drawTeam(t *rapid.T, size int, name string) []rating.Rating {
	out := make([]rating.Rating, size)
	for i := range out {
		out[i] = rating.Rating{
			Mu:    rapid.Float64Range(0, 50).Draw(t, name),
			Sigma: rapid.Float64Range(0.5, 10).Draw(t, name+" deviation"),
		}
	}
	return out
}

func TestOneGame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rating.Default()
		size := rapid.IntRange(1, 2).Draw(t, "size")
		a, b := drawTeam(t, size, "a"), drawTeam(t, size, "b")
		chance := m.WinChance(a, b)
		if sum := chance + m.WinChance(b, a); math.Abs(sum-1) > 1e-12 {
			t.Fatalf("the chances of both sides sum to %v", sum)
		}
		won := append(append([]rating.Rating{}, a...), b...)
		m.Update(won[:size], won[size:], 1)
		for i, before := range append(append([]rating.Rating{}, a...), b...) {
			if up := won[i].Mu >= before.Mu; up != (i < size) {
				t.Fatalf("person %d went from %v to %v", i, before, won[i])
			}
			if won[i].Sigma > before.Sigma || won[i].Sigma <= 0 {
				t.Fatalf("the deviation of person %d went from %v to %v", i, before.Sigma, won[i].Sigma)
			}
		}
		if m.WinChance(won[:size], won[size:]) < chance-1e-12 {
			t.Fatalf("after a win the chance fell from %v", chance)
		}
		still := append([]rating.Rating{}, a...)
		m.Update(still, append([]rating.Rating{}, b...), chance)
		for i := range still {
			if math.Abs(still[i].Mu-a[i].Mu) > 1e-9 {
				t.Fatalf("the result that was expected moved person %d", i)
			}
		}
	})
}

func TestModelsThatCannotRate(t *testing.T) {
	for name, change := range map[string]func(*rating.Model){
		"no deviation":       func(m *rating.Model) { m.Sigma = 0 },
		"no luck":            func(m *rating.Model) { m.Beta = 0 },
		"no evidence":        func(m *rating.Model) { m.Evidence = 0 },
		"no blur":            func(m *rating.Model) { m.Blur = 0 },
		"flat chances":       func(m *rating.Model) { m.Steep = -1 },
		"growth below zero":  func(m *rating.Model) { m.Growth = -1 },
		"growth without end": func(m *rating.Model) { m.Growth = math.Inf(1) },
		"no mean":            func(m *rating.Model) { m.Mu = math.NaN() },
	} {
		m := rating.Default()
		change(&m)
		if _, err := rating.Replay[int](m, nil, nil); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}

// TestAStatedLevelComesBack from the rating that it gives, and a better one is a higher level.
func TestAStatedLevelComesBack(t *testing.T) {
	m := rating.Club()
	for _, level := range []float64{1, 2.5, 3, 4.5, 6} {
		if got := m.Stated(m.Level(level)); math.Abs(got-level) > 1e-9 {
			t.Errorf("level %g comes back as %g", level, got)
		}
	}
}
