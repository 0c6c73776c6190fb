package rolling

import (
	"slices"

	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// What weighs only where courts free one by one, in the unit of [measure.Order], from which the prices of all that
// plans are judged by as well are taken. Set by trial over hundreds of simulated nights
// (session/simulation/cmd/rolling).
const (
	// Strictly by waiting time, a wait of the minutes between two free courts; it grows with the third power. Of those
	// who have waited twice as long, a fifth of these minutes of difference weighs more than a partner's repeat.
	strictWeight = 200
	// To mix more, the third power of a minute's wait: of those who have waited 11 minutes, one minute more weighs
	// about as much as two repeated meetings.
	mixWeight = 0.1
	// The square of a minute by which somebody would wait longer by more than slack minutes than anybody in turn, to
	// mix more.
	overWeight   = 107
	slack        = 3
	behindWeight = 64 // a game that somebody had less than others for the time present
	recentWeight = 43 // two who came off court together
	bandWeight   = 21 // a player outside the band of levels that the court prefers
	levelWeight  = 3  // a level by which one team is the stronger

	// Of two who were partners or met on the last night, for each game there: far less than anything of tonight.
	partnersLately = 4
	metLately      = 1
)

// prices are what repeats, wishes and sure winners cost, by the order of importance.
type prices struct{ meeting, partner, opponent, wish, onesided float64 }

func newPrices(p *night.Problem) prices {
	each := func(k measure.ID) float64 { return float64(measure.Usual[k]) }
	w := prices{meeting: each(measure.Meetings), partner: each(measure.Partners), opponent: each(measure.Opponents), wish: each(measure.Missing)}
	switch step, _ := p.Even(); step {
	case night.GentleLevels:
		w.onesided = measure.GentleOnesided
	case night.EvenLevels:
		w.onesided = each(measure.Onesided)
	}
	return w
}

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
	seats := g.Seats()
	for x, i := range seats {
		if m := n.Mate[i]; m != night.Nobody && m != seats[x^1] && slices.Contains(seats[:], m) {
			return false
		}
	}
	return true
}

// cost is what the game costs by whom people have met before and by levels.
func (c *caller) cost(g night.Game) float64 {
	sum := 0.0
	seats := g.Seats()
	for x, i := range seats {
		for y, j := range seats[:x] {
			m := c.met.of(i, j)
			sum += c.prices.meeting * float64(m.P+m.O)
			if x^y == 1 {
				sum += c.partners(i, j, int(m.P))
			} else {
				sum += c.prices.opponent * float64(m.O)
			}
			if c.met.last(i, j) {
				sum += recentWeight
			}
			if c.lately != nil {
				sum += c.lately[[2]night.Player{min(i, j), max(i, j)}].of(x^y == 1)
			}
		}
	}
	return sum + c.levelCost(seats, g.Court)
}

// before is what it costs that two are partners, or meet otherwise, who did so on the nights before.
type before struct{ partners, others float64 }

func (b before) of(partners bool) float64 {
	if partners {
		return b.partners
	}
	return b.others
}

// recall makes prices of who met on the nights before, nil of nobody.
func recall(lately []night.Recent) map[[2]night.Player]before {
	if len(lately) == 0 {
		return nil
	}
	out := make(map[[2]night.Player]before, len(lately))
	for _, r := range lately {
		met := float64(metLately*(r.Partners+r.Opponents)) / night.LastNight
		out[[2]night.Player{min(r.A, r.B), max(r.A, r.B)}] = before{met + float64(partnersLately*r.Partners)/night.LastNight, met}
	}
	return out
}

// partners is what it costs that two are partners who were so many times before. A wish is granted before anything
// else, and not more often than was asked.
func (c *caller) partners(i, j night.Player, before int) float64 {
	if w := c.n.Wishes; w != nil && w.Times[w.At(i, j)] >= 0 {
		if before < int(w.Times[w.At(i, j)]) {
			return -c.prices.wish
		}
		return c.prices.wish
	}
	if c.n.Mate[i] == j {
		return 0
	}
	return c.prices.partner * float64(before)
}

// again counts the partners of a game who were partners before, without those who always are or have asked for it.
func (c *caller) again(g night.Game) (count int) {
	for _, t := range [2]night.Team{g.A, g.B} {
		m := c.met.of(t[0], t[1])
		w := c.n.Wishes
		asked := w != nil && int(w.Times[w.At(t[0], t[1])]) > int(m.P)
		if !asked && c.n.Mate[t[0]] != t[1] {
			count += int(m.P)
		}
	}
	return count
}

// levelCost is what uneven teams and a court's preferred band cost.
func (c *caller) levelCost(seats [4]night.Player, at night.Court) float64 {
	sum := 0.0
	if c.n.Bands {
		court := c.n.Problem.Courts[at]
		for _, i := range seats {
			if !court.Suits(c.n.Problem.People[i].Level) {
				sum += bandWeight
			}
		}
	}
	gap, known := c.gap(seats)
	if !known {
		return sum
	}
	if gap > c.n.Widest {
		sum += c.prices.onesided
	}
	return sum + float64(levelWeight*gap)/10
}

// gap is how far the levels of two teams are apart, in tenths. An unknown level balances with anything.
func (c *caller) gap(seats [4]night.Player) (gap int, known bool) {
	for x, i := range seats {
		l := c.levels[i]
		if l == 0 {
			return 0, false
		}
		if x >= 2 {
			l = -l
		}
		gap += l
	}
	return max(gap, -gap), true
}
