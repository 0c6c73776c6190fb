package pace

import (
	"fmt"
	"math"
	"slices"

	"club/quadrille/scoring"
)

const (
	// DefaultServeWins is the chance of the serving team in a rally that is assumed until rallies are counted.
	// No paper gives one for club play; the receivers are known to have the better of a rally.
	DefaultServeWins = 0.44
	// Negligible is the chance below which a final score is left out of [Game.Outcomes].
	Negligible = 1e-9

	minChance = 0.01
	maxChance = 0.99
)

// Outcome is one final score a game can come to.
type Outcome struct {
	Score   scoring.Score
	P       float64 // its chance
	Rallies float64 // mean number of rallies of the games that end so
	SD      float64 // standard deviation of that number
}

// Game is the distribution of what is left of a game.
type Game struct {
	Mean     float64   // rallies
	SD       float64   // of the rallies
	Points   float64   // mean of the points still to be scored, both teams together
	WinsA    float64   // chance that team A wins
	Outcomes []Outcome // final scores with more than a negligible chance, most likely first

	pmf []float64 // by number of rallies
}

// Distribution is a whole game in which team A serves first. The chances are those of A and of B to win a
// rally that they serve, each from 0.01 to 0.99. A time limit in the rules is not looked at.
//
// The model and its check values: D. DeFord, S. Ethier, arXiv:2303.02942 (2023).
func Distribution(r scoring.Rules, serveWinsA, serveWinsB float64) (Game, error) {
	if err := r.Validate(); err != nil {
		return Game{}, err
	}
	return Remaining(scoring.Start(r, scoring.A), serveWinsA, serveWinsB)
}

// Remaining is what is left of a game that stands at s: [Distribution] from the middle.
func Remaining(s scoring.State, serveWinsA, serveWinsB float64) (Game, error) {
	for _, p := range []float64{serveWinsA, serveWinsB} {
		if !(p >= minChance && p <= maxChance) {
			return Game{}, fmt.Errorf("the serving team wins a rally with a chance of %v to %v, and not of %v: %v is usual",
				minChance, maxChance, p, DefaultServeWins)
		}
	}
	if s.Done {
		won := 0.0
		if s.Winner == scoring.A {
			won = 1
		}
		return Game{WinsA: won, Outcomes: []Outcome{{Score: s.Score, P: 1}}, pmf: []float64{1}}, nil
	}
	return measure(newChain(s, serveWinsA, serveWinsB), s.Score), nil
}

// measure sums the chain up.
func measure(c *chain, from scoring.Score) Game {
	var g Game
	var sums [][3]float64 // by final score: chance, and its first two moments of rallies
	c.run(func(n int, final int32, p float64) {
		for len(g.pmf) <= n {
			g.pmf = append(g.pmf, 0)
		}
		for len(sums) <= int(final) {
			sums = append(sums, [3]float64{})
		}
		g.pmf[n] += p
		rallies := float64(n)
		s := &sums[final]
		s[0] += p
		s[1] += p * rallies
		s[2] += p * rallies * rallies
	})
	var second float64
	for i, s := range sums {
		score := c.finals[i]
		g.Mean += s[1]
		second += s[2]
		g.Points += s[0] * float64(score.A+score.B-from.A-from.B)
		if score.A > score.B {
			g.WinsA += s[0]
		}
		if s[0] > Negligible {
			mean := s[1] / s[0]
			g.Outcomes = append(g.Outcomes, Outcome{score, s[0], mean, math.Sqrt(max(0, s[2]/s[0]-mean*mean))})
		}
	}
	g.SD = math.Sqrt(max(0, second-g.Mean*g.Mean))
	slices.SortFunc(g.Outcomes, likelier)
	return g
}

// likelier orders outcomes by chance, and equal ones by score so that the order never changes.
func likelier(x, y Outcome) int {
	switch {
	case x.P > y.P:
		return -1
	case x.P < y.P:
		return 1
	case x.Score.A != y.Score.A:
		return y.Score.A - x.Score.A
	}
	return y.Score.B - x.Score.B
}

// Quantile is the least number of rallies within which the game is over with a chance of at least q.
func (g Game) Quantile(q float64) int {
	sum := 0.0
	for n, p := range g.pmf {
		if sum += p; sum >= q {
			return n
		}
	}
	return len(g.pmf) - 1
}

// Chance is the chance that the game ends with exactly this many rallies.
func (g Game) Chance(rallies int) float64 {
	if rallies < 0 || rallies >= len(g.pmf) {
		return 0
	}
	return g.pmf[rallies]
}

// Of is the outcome of one final score, and false when its chance is negligible.
func (g Game) Of(score scoring.Score) (Outcome, bool) {
	for _, o := range g.Outcomes {
		if o.Score == score {
			return o, true
		}
	}
	return Outcome{}, false
}
