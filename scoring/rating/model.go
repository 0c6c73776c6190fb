package rating

import (
	"fmt"
	"math"
)

// Model is how results turn into ratings. Its zero value is unusable; start from [Default] or [Club].
type Model struct {
	Mu    float64 // of somebody who has not played
	Sigma float64 // of the same, and the most that a rating can become unsure again
	Beta  float64 // how much luck a game has, in the unit of skill

	// Evidence is how much the result of a game tells, beside the win or loss that the paper has: a result that
	// scatters half as much around what was expected tells twice as much. Steps are so many times longer, and
	// variances shrink so many times faster.
	Evidence float64
	// Whole lets a variance shrink by all that a game tells, and not by the part of it that the paper takes:
	// the choice of its factor gamma is free, there the deviation of the team over c, here 1.
	Whole bool
	// Blur is how much of what is uncertain about two teams flattens the chances: all of it in the paper, 1. The
	// mean of a logistic curve over a normal distribution is about the curve with pi/8 of the variance (D. MacKay,
	// The evidence framework applied to classification networks, Neural Computation 4 (1992) 720-736). With
	// all of it ratings spread too far while they are unsure, and cannot come back once they are sure.
	Blur float64
	// Steep is how many times steeper than shares the chances of winning are, as log odds: see
	// [Model.WinChance].
	Steep float64

	// HalfMargin lets the points of a game count for half of its result. That is an extension of ours and not
	// in the paper: see [Model.Share].
	HalfMargin bool
	// Growth is by how much a rating becomes less sure in a week without games: variances grow by its square
	// for each week. 0 for not at all. See [SettledGrowth].
	Growth float64
}

// Default is the plain model, with the numbers that other implementations start from as well, so that ratings
// can be compared with theirs: mean 25, deviation 25/3, luck 25/6, no margin, no growth. In simulated clubs it
// claims more than it knows: see [Club].
func Default() Model {
	return Model{Mu: 25, Sigma: 25.0 / 3, Beta: 25.0 / 6, Evidence: 1, Blur: 1, Steep: 1}
}

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
		{"evidence of a game", m.Evidence, math.SmallestNonzeroFloat64},
		{"blur of chances", m.Blur, math.SmallestNonzeroFloat64},
		{"steepness of chances", m.Steep, math.SmallestNonzeroFloat64},
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

// Stated is the level on the scale of [Model.Level] at which somebody of a rating would start.
func (m Model) Stated(r Rating) float64 { return middleLevel + (r.Mu-m.Mu)/(2*m.Beta) }

// Grown is r after weeks without games, never less sure than a newcomer.
func (m Model) Grown(r Rating, weeks float64) Rating {
	if m.Growth == 0 || weeks <= 0 || r.Sigma >= m.Sigma {
		return r
	}
	r.Sigma = min(m.Sigma, math.Sqrt(r.Sigma*r.Sigma+m.Growth*m.Growth*weeks))
	return r
}

// WinChance is the chance that team a beats team b: a logistic curve in the difference of the teams over
// everything that is uncertain. Where the points of a game count, ratings settle where shares are right, which
// are nearer to one half than chances of winning; Steep makes up for it.
func (m Model) WinChance(a, b []Rating) float64 {
	x, y := total(a), total(b)
	return logistic(m.Steep * (x.mu - y.mu) / m.spread(x, y))
}

func logistic(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

// Update rates one game between teams a and b, in place. The share is what a had of the result, as from
// [Model.Share]: 1 for a win, 0 for a loss, 1/2 for a draw.
//
// With v the sum of a team's variances and c² = blur (v_a + v_b) + 2 beta², the Bradley–Terry equations of Weng and
// Lin 2011 become for two teams: for a, omega = v_a/c (share - p) and
// delta = sqrt(v_a)/c · v_a/c² · p (1 - p); a member with the part w = sigma²/v_a moves by w·omega, and its
// variance shrinks by the factor 1 - w·delta. Evidence multiplies omega and delta, and with Whole the first
// factor of delta is 1.
func (m Model) Update(a, b []Rating, share float64) {
	x, y := total(a), total(b)
	c := m.spread(x, y)
	p := logistic((x.mu - y.mu) / c)
	m.apply(a, x, c, share-p, p*(1-p))
	m.apply(b, y, c, p-share, p*(1-p))
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

// spread is what is uncertain about a game of two teams, c in the paper.
func (m Model) spread(x, y team) float64 {
	return math.Sqrt(m.Blur*(x.variance+y.variance) + 2*m.Beta*m.Beta)
}

// apply moves the members of one team. The surprise is its share of the result less the chance it had.
func (m Model) apply(members []Rating, t team, c, surprise, information float64) {
	gamma := math.Sqrt(t.variance) / c
	if m.Whole {
		gamma = 1
	}
	omega := m.Evidence * t.variance / c * surprise
	delta := m.Evidence * gamma * t.variance / (c * c) * information
	for i, r := range members {
		part := r.Sigma * r.Sigma / t.variance
		members[i].Mu += part * omega
		members[i].Sigma *= math.Sqrt(max(1-part*delta, shrinkFloor))
	}
}
