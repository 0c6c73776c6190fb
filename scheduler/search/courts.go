package search

import (
	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/measure"
	"club/quadrille/scheduler/night"
)

// balanceCourts exchanges the courts of games within each round so that everybody plays about equally
// often on each, keeping walls and preferred bands. Who plays with whom stays. The search is a short
// annealing of the sum of squares of how often each person played on each court, which is least when
// everybody's numbers differ by at most one. Games that people have seen stay on their courts.
func balanceCourts(n *night.Night, rounds, shown []night.Round, d *dice.Dice) {
	u := newCourtUse(n, rounds)
	var live []int // rounds in which courts can be exchanged
	seats := 0
	for r := range rounds {
		fresh := 0
		for _, g := range rounds[r].Games {
			fresh += night.One(!seen(shown, r, g))
		}
		if fresh > 1 {
			live = append(live, r)
			seats += fresh
		}
	}
	if seats == 0 {
		return
	}
	excess, least := u.excess(), u.excess()
	best := courtsOf(rounds)
	moves := min(courtMoves, 600*seats)
	for k := 0; k < moves && least > 0; k++ {
		r := live[d.Roll(len(live))]
		games := rounds[r].Games
		g, h := d.Roll(len(games)), d.Roll(len(games))
		if g == h || seen(shown, r, games[g]) || seen(shown, r, games[h]) || !mayTrade(n, games[g], games[h]) {
			continue
		}
		gain := u.gain(games[g], games[h])
		if gain < 0 && -gain > d.Nerve(courtHot*float64(moves-k)/float64(moves)) {
			continue
		}
		u.trade(games[g], games[h])
		games[g].Court, games[h].Court = games[h].Court, games[g].Court
		if excess -= gain; excess < least {
			least, best = excess, courtsOf(rounds)
		}
	}
	for r := range rounds {
		for g := range rounds[r].Games {
			rounds[r].Games[g].Court = best[r][g]
		}
		sortByCourt(rounds[r].Games)
	}
}

// seen tells whether a game of a round was shown.
func seen(shown []night.Round, r int, g night.Game) bool { return r < len(shown) && shown[r].Has(g) }

// The most exchanges of courts that are tried, and the temperature at their beginning; it falls to
// nothing.
const (
	courtMoves = 60_000
	courtHot   = 6
)

// courtsOf notes the court of each game.
func courtsOf(rounds []night.Round) [][]night.Court {
	courts := make([][]night.Court, len(rounds))
	for r, round := range rounds {
		for _, g := range round.Games {
			courts[r] = append(courts[r], g.Court)
		}
	}
	return courts
}

// courtUse counts how often each person played on each court, at person·courts + court.
type courtUse struct {
	n      *night.Night
	courts int
	count  []int
}

func newCourtUse(n *night.Night, rounds []night.Round) *courtUse {
	u := &courtUse{n: n, courts: len(n.Problem.Courts)}
	u.count = make([]int, n.People*u.courts)
	games := n.Problem.Earlier()
	for _, round := range rounds {
		games = append(games, round.Games...)
	}
	for _, g := range games {
		if g.Court >= 0 && int(g.Court) < u.courts {
			for _, i := range n.OnlyKnown(g.Players()) {
				u.count[int(i)*u.courts+int(g.Court)]++
			}
		}
	}
	return u
}

// excess is by how much the sum of squares, and people outside preferred bands, exceed the least
// possible.
func (u *courtUse) excess() int {
	sum := 0
	for i := range u.n.People {
		games, squares := 0, 0
		for c, k := range u.count[i*u.courts : (i+1)*u.courts] {
			games += k
			squares += k * k
			sum += k * outOfBandCourt * night.One(!u.n.Problem.Courts[c].Suits(u.n.Problem.People[i].Level))
		}
		sum += squares - games - 2*measure.LeastPairs(games, u.courts)
	}
	return sum
}

// outOfBandCourt is the cost of one person's game on a court whose preferred band is another.
const outOfBandCourt = 100

// gain is by how much the excess falls if two games exchange courts.
func (u *courtUse) gain(g, h night.Game) int {
	return u.moved(g, h.Court) + u.moved(h, g.Court)
}

func (u *courtUse) moved(g night.Game, to night.Court) int {
	gain := 0
	from := g.Court
	for _, i := range g.Seats() {
		if i == night.Nobody {
			continue
		}
		row := u.count[int(i)*u.courts : int(i+1)*u.courts]
		gain += 2 * (row[from] - row[to] - 1)
		if u.n.Bands {
			level := u.n.Problem.People[i].Level
			gain += outOfBandCourt * (night.One(u.n.Problem.Courts[to].Suits(level)) - night.One(u.n.Problem.Courts[from].Suits(level)))
		}
	}
	return gain
}

// trade lets two games exchange courts in the counts.
func (u *courtUse) trade(g, h night.Game) {
	u.move(g, h.Court)
	u.move(h, g.Court)
}

// move counts a game on another court.
func (u *courtUse) move(g night.Game, to night.Court) {
	for _, i := range g.Seats() {
		if i != night.Nobody {
			u.count[int(i)*u.courts+int(g.Court)]--
			u.count[int(i)*u.courts+int(to)]++
		}
	}
}

// mayTrade tells whether all people of two games may play on each other's court.
func mayTrade(n *night.Night, g, h night.Game) bool {
	if n.Walls == nil {
		return true
	}
	for _, i := range g.Players() {
		if !n.MayPlayOn(i, h.Court) {
			return false
		}
	}
	for _, i := range h.Players() {
		if !n.MayPlayOn(i, g.Court) {
			return false
		}
	}
	return true
}
