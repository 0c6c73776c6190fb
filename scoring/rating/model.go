package rating

import (
	"fmt"
	"math"
)

// Model is how results turn into ratings. Its zero value is unusable; start from [Default].
type Model struct {
	Mu    float64 // of somebody who has not played
	Sigma float64 // of the same, and the most that a rating can become unsure again
	Beta  float64 // how much luck a game has, in the unit of skill

	// HalfMargin lets the points of a game count for half of its result. That is an extension of ours and not
	// in the paper: see [Model.Share].
	HalfMargin bool
	// Growth is by how much a rating becomes less sure in a week without games: variances grow by its square
	// for each week. 0 for not at all. See [SettledGrowth].
	Growth float64
}

// Default is the model with the numbers that other implementations start from as well, so that ratings can be
// compared with theirs: mean 25, deviation 25/3, luck 25/6, no margin, no growth.
func Default() Model { return Model{Mu: 25, Sigma: 25.0 / 3, Beta: 25.0 / 6} }

// SettledGrowth is a growth per week with which a settled person, of deviation 3, counts as new after two years
// away: the square root of ((25/3)² - 3²)/104. M. Glickman chooses the growth of his system by the
// same thought.
const SettledGrowth = 0.762

// shrinkFloor keeps a variance from vanishing in one game. It is kappa in the paper.
const shrinkFloor = 1e-4

// Validate says what is wrong with m, and nil when it can rate.
func (m Model) Validate() error {
	for _, part := range []struct {
		name  string
		value float64
		least float64
	}{
		{"deviation", m.Sigma, math.SmallestNonzeroFloat64},
		{"luck of a game", m.Beta, math.SmallestNonzeroFloat64},
		{"growth a week", m.Growth, 0},
	} {
		if !(part.value >= part.least) || math.IsInf(part.value, 1) {
			return fmt.Errorf("a model cannot have the %s %v: the usual is in rating.Default", part.name, part.value)
		}
	}
	if math.IsNaN(m.Mu) || math.IsInf(m.Mu, 0) {
		return fmt.Errorf("a model cannot start people at %v: 25 is usual", m.Mu)
	}
	return nil
}

// New is the rating of somebody who has not played.
func (m Model) New() Rating { return Rating{m.Mu, m.Sigma} }

// middleLevel is the stated level that starts at the model's mean.
const middleLevel = 3.0

// Level is the rating of somebody who has not played and states a level from 1.0 to 6.0 on the governing
// body's scale of self-rating. Half a level is taken as one Beta, which is our assumption; the deviation
// stays that of a newcomer, so that a few games outweigh the statement.
func (m Model) Level(stated float64) Rating {
	return Rating{m.Mu + (stated-middleLevel)*2*m.Beta, m.Sigma}
}

// Grown is r after weeks without games, never less sure than a newcomer.
func (m Model) Grown(r Rating, weeks float64) Rating {
	if m.Growth == 0 || weeks <= 0 || r.Sigma >= m.Sigma {
		return r
	}
	r.Sigma = min(m.Sigma, math.Sqrt(r.Sigma*r.Sigma+m.Growth*m.Growth*weeks))
	return r
}

// WinChance is the chance that team a beats team b: the model's own, a logistic curve in the difference of the
// teams over everything that is uncertain.
func (m Model) WinChance(a, b []Rating) float64 {
	x, y := total(a), total(b)
	return 1 / (1 + math.Exp((y.mu-x.mu)/m.spread(x, y)))
}

// Update rates one game between teams a and b, in place. The share is what a had of the result, as from
// [Model.Share]: 1 for a win, 0 for a loss, 1/2 for a draw.
//
// With v the sum of a team's variances and c² = v_a + v_b + 2 beta², the Bradley–Terry equations of Weng and
// Lin 2011 become for two teams: for a, omega = v_a/c (share - p) and
// delta = sqrt(v_a)/c · v_a/c² · p (1 - p); a member with the part w = sigma²/v_a moves by w·omega, and its
// variance shrinks by the factor 1 - w·delta.
func (m Model) Update(a, b []Rating, share float64) {
	x, y := total(a), total(b)
	c := m.spread(x, y)
	p := 1 / (1 + math.Exp((y.mu-x.mu)/c))
	apply(a, x, c, share-p, p*(1-p))
	apply(b, y, c, p-share, p*(1-p))
}

// team is the sum of its members.
type team struct{ mu, variance float64 }

func total(members []Rating) team {
	var t team
	for _, r := range members {
		t.mu += r.Mu
		t.variance += r.Sigma * r.Sigma
	}
	return t
}

// spread is everything that is uncertain about the difference of two teams, c in the paper.
func (m Model) spread(x, y team) float64 {
	return math.Sqrt(x.variance + y.variance + 2*m.Beta*m.Beta)
}

// apply moves the members of one team. The surprise is its share of the result less the chance it had.
func apply(members []Rating, t team, c, surprise, information float64) {
	omega := t.variance / c * surprise
	delta := math.Sqrt(t.variance) / c * t.variance / (c * c) * information
	for i, r := range members {
		part := r.Sigma * r.Sigma / t.variance
		members[i].Mu += part * omega
		members[i].Sigma *= math.Sqrt(max(1-part*delta, shrinkFloor))
	}
}
