package scheduler

import (
	"cmp"
	"fmt"
	"slices"
)

// Result is the outcome of one game of a ladder round.
type Result struct {
	Game   Game
	Winner int // 0 = team A, 1 = team B, -1 = level when time ended
}

// NextLadder makes the next round of a winners-up ladder. History holds the rounds so far, the one
// that last is about at its end; courts are the rungs, the first court the top.
//
// The winners of a game move up a court and the losers down; on the top court the winners stay, on the
// bottom court the losers. On every court the two who come together are split. A game that is level
// when time ends is decided by lot. Sit-outs are shared as everywhere; whoever sat out
// or comes back enters on the court of the last game, and whoever is new at the bottom. Keep-aparts
// are kept by an exchange with a neighbouring court. With one court, teams change and
// nobody moves. Fixed partners do not stay together on a ladder.
func NextLadder(p Problem, last []Result) (Round, error) {
	p.Rounds, p.Format = 1, Ladder
	if reasons := contradictions(&p); len(reasons) > 0 {
		return Round{}, &Conflict{reasons}
	}
	l := newLadder(&p)
	for _, result := range last {
		if err := l.enter(result); err != nil {
			return Round{}, err
		}
	}
	return l.round()
}

// firstLadder makes the first round, the best people on the first court; people without a level are
// taken as average, and equal ones are placed by lot.
func firstLadder(p Problem) ([]Round, error) {
	p.Rounds = min(p.Rounds, 1)
	if p.Rounds == 0 {
		return nil, nil
	}
	l := newLadder(&p)
	if levels := l.n.levels(); levels != nil {
		for i := range l.place {
			l.place[i] = -float64(levels[i]) // before anybody has played, the level is the rung
		}
	}
	r, err := l.round()
	if err != nil {
		return nil, err
	}
	return []Round{r}, nil
}

// ladder is the state between two rounds.
type ladder struct {
	n      *night
	d      *dice
	place  []float64 // where each person belongs: the smaller the higher
	mate   []Player  // the partner of the last game
	memory *memory
}

func newLadder(p *Problem) *ladder {
	p.Together = slices.DeleteFunc(slices.Clone(p.Together), func(t Pair) bool { return t.Times == 0 })
	n := newNight(p)
	l := &ladder{n: n, d: newDice(p.Seed, 3), place: make([]float64, n.people), mate: make([]Player, n.people)}
	for i := range l.place {
		l.place[i], l.mate[i] = float64(len(p.Courts)), Nobody // new people start at the bottom
	}
	for _, round := range p.History {
		for _, g := range round.Games {
			for _, i := range n.valid(g.Players()) {
				l.place[i] = float64(g.Court)
			}
		}
	}
	l.memory = newMemory(n.people, p.earlier())
	return l
}

// enter moves the people of a finished game.
func (l *ladder) enter(r Result) error {
	g := r.Game
	if g.Court < 0 || int(g.Court) >= len(l.n.p.Courts) || len(l.n.valid(g.Players())) != len(g.Players()) {
		return fmt.Errorf("a result names a court or a person who is not in the list: enter the games that were called")
	}
	up, down := g.A, g.B
	if r.Winner == 1 || r.Winner == -1 && l.d.roll(2) == 1 {
		up, down = down, up
	}
	for k := range 2 {
		l.move(up[k], up[1-k], float64(g.Court)-1)
		l.move(down[k], down[1-k], float64(g.Court)+1)
	}
	return nil
}

func (l *ladder) move(i, partner Player, to float64) {
	if i != Nobody {
		l.place[i], l.mate[i] = to, partner
	}
}

// round chooses who plays, puts them on the courts by their places and splits each four.
func (l *ladder) round() (Round, error) {
	n := l.n
	line := n.lineup(n.first, len(n.openCourts(n.first)), newLedger(n), l.d)
	var players []Player
	for _, court := range line.units {
		for _, u := range court {
			players = append(players, u.a)
		}
	}
	shuffle(l.d, players)
	slices.SortStableFunc(players, func(x, y Player) int { return cmp.Compare(l.place[x], l.place[y]) })
	courts := slices.Clone(line.courts)
	slices.Sort(courts)
	var round Round
	players = append(players, line.out...)
	l.keepApart(courts, players)
	round.Out = players[4*len(courts):]
	for k, c := range courts {
		g, broken := l.split(c, players[4*k:4*k+4])
		if broken > 0 {
			return Round{}, &Conflict{[]string{fmt.Sprintf(
				"the four of %s in round %d cannot be seated without breaking a keep-apart or a court wall", n.p.courtName(c), n.first+1)}}
		}
		round.Games = append(round.Games, g)
	}
	return round, nil
}

// keepApart exchanges people with other courts, the nearest first, and at last with the bench, which
// follows the courts in the list, until no court holds people who cannot be seated.
func (l *ladder) keepApart(courts []Court, players []Player) {
	outs := l.n.pastOuts()
	bad := func(k int) int {
		if k == len(courts) {
			return 0
		}
		_, broken := l.split(courts[k], players[4*k:4*k+4])
		return broken
	}
	for k := range courts {
		for distance := 1; bad(k) > 0 && distance < len(courts); distance++ {
			for _, h := range [2]int{k + distance, k - distance} {
				if h >= 0 && h < len(courts) {
					l.exchange(players, k, h, 4*h+4, bad)
				}
			}
		}
		if bad(k) > 0 {
			// whoever sat out least steps back for whoever sat out most
			slices.SortStableFunc(players[4*k:4*k+4], func(x, y Player) int { return cmp.Compare(outs[x], outs[y]) })
			slices.SortStableFunc(players[4*len(courts):], func(x, y Player) int { return cmp.Compare(outs[y], outs[x]) })
			l.exchange(players, k, len(courts), len(players), bad)
		}
	}
}

// exchange tries all exchanges of court k with the places of court or bench h, which end before end,
// until nothing is broken on k.
func (l *ladder) exchange(players []Player, k, h, end int, bad func(int) int) {
	now := bad(k) + bad(h)
	for x := 4 * k; x < 4*k+4 && bad(k) > 0; x++ {
		for y := 4 * h; y < end; y++ {
			players[x], players[y] = players[y], players[x]
			if after := bad(k) + bad(h); after < now {
				now = after
				break
			}
			players[x], players[y] = players[y], players[x]
		}
	}
}

// split makes two teams of four people: what is asked first, then partners of the last game apart, few
// repeated partners, close teams. It returns how much of what is asked stays broken.
func (l *ladder) split(c Court, four []Player) (best Game, broken int) {
	least := -1
	for way := range 3 {
		x := [3][4]int{{0, 3, 1, 2}, {0, 2, 1, 3}, {0, 1, 2, 3}}[way]
		g := Game{c, Team{four[x[0]], four[x[1]]}, Team{four[x[2]], four[x[3]]}}
		bad := l.broken(g)
		if cost := 1<<20*bad + l.cost(g); least < 0 || cost < least {
			best, least, broken = g, cost, bad
		}
	}
	return best, broken
}

// broken counts what a game breaks of what is asked.
func (l *ladder) broken(g Game) int {
	bad := 0
	players := g.Players()
	for x, i := range players {
		bad += one(!l.n.fits(i, g.Court))
		for _, j := range players[:x] {
			if w := l.n.wishes; w != nil {
				bad += one(w.apart[w.at(i, j)]) + one(w.unteam[w.at(i, j)] && partners(g, i, j))
			}
		}
	}
	return bad
}

// cost is how little a split is liked.
func (l *ladder) cost(g Game) int {
	sum, gap := 0, 0
	for k, t := range [2]Team{g.A, g.B} {
		sum += 1000*one(l.mate[t[0]] == t[1]) + 100*int(l.memory.of(t[0], t[1]).p)
		for _, i := range t {
			gap += (1 - 2*k) * int(10*l.n.p.People[i].Level)
		}
	}
	return sum + min(99, max(gap, -gap))
}
