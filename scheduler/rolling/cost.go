package rolling

import (
	"math"

	"club/quadrille/scheduler/night"
)

// What a game of the rolling flow costs, set by trial over hundreds of simulated nights
// (session/simulation/cmd/rolling). Strictly by waiting time, to pass somebody over costs much: of those who have
// waited twice the minutes between two free courts, a sixth of these minutes of difference weighs as much as a
// partner's repeat or a wish, and all else decides among those who have waited about as long. To mix more it
// costs little, but much from where somebody would wait longer by slack minutes than anybody in turn.
const (
	strictWeight  = 40
	mixWeight     = 0.7
	overWeight    = 20
	slack         = 3
	behindWeight  = 6
	partnerWeight = 100
	wantedWeight  = 100
	limitWeight   = 40
	recentWeight  = 8
	bandWeight    = 4
	meetingWeight = 3
	levelWeight   = 0.5
)

// splits are the three ways in which four people make two teams.
func (c *caller) splits(four []night.Player) [3]night.Game {
	a, b, x, y := four[0], four[1], four[2], four[3]
	return [3]night.Game{
		{Court: c.r.Court, A: night.Team{a, b}, B: night.Team{x, y}},
		{Court: c.r.Court, A: night.Team{a, x}, B: night.Team{b, y}},
		{Court: c.r.Court, A: night.Team{a, y}, B: night.Team{b, x}},
	}
}

// valid tells whether the teams are as the format and people's wishes ask.
func (c *caller) valid(g night.Game) bool {
	n := c.n
	for _, t := range [2]night.Team{g.A, g.B} {
		switch {
		case n.Side != nil && n.Side[t[0]] == n.Side[t[1]]:
			return false
		case n.Wishes != nil && n.Wishes.Unteam[n.Wishes.At(t[0], t[1])]:
			return false
		}
	}
	for _, i := range g.Players() {
		for _, j := range g.Players() {
			if n.Mate[i] == j && !g.Partners(i, j) {
				return false
			}
		}
	}
	return true
}

// cost is what the game costs by whom people have met before and by levels.
func (c *caller) cost(g night.Game) float64 {
	sum := 0.0
	players := g.Players()
	for x, i := range players {
		for _, j := range players[:x] {
			m := c.met.of(i, j)
			p, o := int(m.P), int(m.O)
			sum += meetingWeight * float64(p+o)
			if g.Partners(i, j) {
				sum += partnerWeight * float64(p) * one64(c.n.Mate[i] != j)
				if w := c.n.Wishes; w != nil && int(w.Times[w.At(i, j)]) > p {
					sum -= wantedWeight + partnerWeight*float64(p)
				}
			} else {
				sum += meetingWeight * float64(o) / 2
			}
			if c.met.last(i, j) {
				sum += recentWeight
			}
		}
	}
	return sum + c.levelCost(g)
}

func one64(yes bool) float64 { return float64(night.One(yes)) }

// levelCost is what uneven teams and a court's preferred band cost.
func (c *caller) levelCost(g night.Game) float64 {
	level := func(i night.Player) float64 { return c.n.Problem.People[i].Level }
	sum := 0.0
	for _, i := range g.Players() {
		sum += bandWeight * one64(!c.n.Problem.Courts[g.Court].Suits(level(i)))
		if level(i) == 0 {
			return sum // an unknown level balances with anything
		}
	}
	a, b := level(g.A[0])+level(g.A[1]), level(g.B[0])+level(g.B[1])
	gap := math.Abs(a - b)
	if step, limit := c.n.Problem.Even(); step != night.AnyLevels && night.WinChance(gap, 0) > limit {
		sum += limitWeight
	}
	return sum + levelWeight*gap
}
