package scheduler

// courtSweeps is how often all pairs of games of all rounds are looked at for a better exchange of
// courts.
const courtSweeps = 40

// balanceCourts exchanges the courts of games within each round so that everybody plays about equally
// often on each, keeping walls and preferred bands. Who plays with whom stays.
func (n *night) balanceCourts(rounds []Round, d *dice) {
	u := newCourtUse(n, rounds)
	for sweep := range courtSweeps {
		changed := false
		for r := range rounds {
			games := rounds[r].Games
			for g := range games {
				for h := range g {
					if games[g].Singles() || games[h].Singles() || !n.mayTrade(games[g], games[h]) {
						continue
					}
					// sweeps in turn allow exchanges that change nothing, which open new ways
					if gain := u.trade(games[g], games[h]); gain > 0 || gain == 0 && sweep%2 == 0 && d.roll(4) == 0 {
						games[g].Court, games[h].Court = games[h].Court, games[g].Court
						changed = true
					} else {
						u.trade(Game{games[h].Court, games[g].A, games[g].B}, Game{games[g].Court, games[h].A, games[h].B})
					}
				}
			}
		}
		if !changed {
			break
		}
	}
	for r := range rounds {
		sortByCourt(rounds[r].Games)
	}
}

// courtUse counts how often each person played on each court, at person·courts + court.
type courtUse struct {
	n      *night
	courts int
	count  []int
}

func newCourtUse(n *night, rounds []Round) *courtUse {
	u := &courtUse{n: n, courts: len(n.p.Courts)}
	u.count = make([]int, n.people*u.courts)
	for _, list := range [2][]Round{n.p.History, rounds} {
		for _, round := range list {
			for _, g := range round.Games {
				if g.Court >= 0 && int(g.Court) < u.courts {
					for _, i := range n.valid(g.Players()) {
						u.count[int(i)*u.courts+int(g.Court)]++
					}
				}
			}
		}
	}
	return u
}

// trade lets two games exchange courts in the counts and returns by how much that makes the use of
// courts more even: the fall of the sum of squares, less what preferred bands lose.
func (u *courtUse) trade(g, h Game) int {
	gain := u.move(g, h.Court) + u.move(h, g.Court)
	for _, x := range [2]struct {
		game Game
		to   Court
	}{{g, h.Court}, {h, g.Court}} {
		for _, i := range x.game.Players() {
			level := u.n.p.People[i].Level
			gain += 100 * (one(u.n.p.Courts[x.to].suits(level)) - one(u.n.p.Courts[x.game.Court].suits(level)))
		}
	}
	return gain
}

// move takes the game's people to another court in the counts and returns the fall of the sum of
// squares.
func (u *courtUse) move(g Game, to Court) int {
	gain := 0
	for _, i := range g.Players() {
		row := u.count[int(i)*u.courts : int(i+1)*u.courts]
		gain += 2 * (row[g.Court] - row[to] - 1)
		row[g.Court]--
		row[to]++
	}
	return gain
}

// mayTrade tells whether all people of two games may play on each other's court.
func (n *night) mayTrade(g, h Game) bool {
	if n.walls == nil {
		return true
	}
	for _, i := range g.Players() {
		if !n.fits(i, h.Court) {
			return false
		}
	}
	for _, i := range h.Players() {
		if !n.fits(i, g.Court) {
			return false
		}
	}
	return true
}
