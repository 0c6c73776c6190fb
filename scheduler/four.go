package scheduler

import "math"

// What a game of the rolling flow costs, set by trial over hundreds of simulated nights. To pass somebody
// over costs much: of those who have waited twice the minutes between two free courts, a sixth of these
// minutes of difference weighs as much as a partner's repeat or a wish. All else decides among
// those who have waited about as long.
const (
	waitWeight    = 40
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
func (c *caller) splits(four []Player) [3]Game {
	a, b, x, y := four[0], four[1], four[2], four[3]
	return [3]Game{
		{c.r.Court, Team{a, b}, Team{x, y}},
		{c.r.Court, Team{a, x}, Team{b, y}},
		{c.r.Court, Team{a, y}, Team{b, x}},
	}
}

// valid tells whether the teams are as the format and people's wishes ask.
func (c *caller) valid(g Game) bool {
	n := c.n
	for _, t := range [2]Team{g.A, g.B} {
		switch {
		case n.side != nil && n.side[t[0]] == n.side[t[1]]:
			return false
		case n.wishes != nil && n.wishes.unteam[n.wishes.at(t[0], t[1])]:
			return false
		}
	}
	for _, i := range g.Players() {
		for _, j := range g.Players() {
			if n.mate[i] == j && !partners(g, i, j) {
				return false
			}
		}
	}
	return true
}

// cost is what the game costs by whom people have met before and by levels.
func (c *caller) cost(g Game) float64 {
	sum := 0.0
	players := g.Players()
	for x, i := range players {
		for _, j := range players[:x] {
			m := c.met.of(i, j)
			p, o := int(m.p), int(m.o)
			sum += meetingWeight * float64(p+o)
			if partners(g, i, j) {
				sum += partnerWeight * float64(p) * one64(c.n.mate[i] != j)
				if w := c.n.wishes; w != nil && int(w.times[w.at(i, j)]) > p {
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

func one64(yes bool) float64 { return float64(one(yes)) }

// levelCost is what uneven teams and a court's preferred band cost.
func (c *caller) levelCost(g Game) float64 {
	level := func(i Player) float64 { return c.n.p.People[i].Level }
	sum := 0.0
	for _, i := range g.Players() {
		sum += bandWeight * one64(!c.n.p.Courts[g.Court].suits(level(i)))
		if level(i) == 0 {
			return sum // an unknown level balances with anything
		}
	}
	a, b := level(g.A[0])+level(g.A[1]), level(g.B[0])+level(g.B[1])
	gap := math.Abs(a - b)
	if limit := c.n.p.LevelLimit; limit > 0 && WinChance(gap, 0) > limit {
		sum += limitWeight
	}
	return sum + levelWeight*gap
}
