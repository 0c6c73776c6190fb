package ladder

import (
	"cmp"
	"fmt"
	"slices"

	"club/quadrille/scheduler/dice"
	"club/quadrille/scheduler/lineup"
	"club/quadrille/scheduler/night"
)

// Result is the outcome of one game of a ladder round.
type Result struct {
	Game   night.Game
	Winner int // 0 = team A, 1 = team B, -1 = level when time ended
}

// Next makes the next round of a winners-up ladder. History holds the rounds so far, the one
// that last is about at its end; courts are the rungs, the first court the top.
//
// The winners of a game move up a court and the losers down; on the top court the winners stay, on the
// bottom court the losers. On every court the two who come together are split. A game that is level
// when time ends is decided by lot. Sit-outs are shared as everywhere; whoever sat out
// or comes back enters on the court of the last game, and whoever is new at the bottom. Keep-aparts
// are kept by an exchange with a neighbouring court. With one court, teams change and
// nobody moves. Fixed partners do not stay together on a ladder.
func Next(p night.Problem, last []Result) (night.Round, error) {
	p.Rounds, p.Format = 1, night.Ladder
	if reasons := night.Contradictions(&p); len(reasons) > 0 {
		return night.Round{}, &night.Conflict{Reasons: reasons}
	}
	l := newLadder(&p)
	for _, result := range last {
		if err := l.enter(result); err != nil {
			return night.Round{}, err
		}
	}
	return l.round()
}

// First makes the first round, the best people on the first court; people without a level are
// taken as average, and equal ones are placed by lot.
func First(p night.Problem) ([]night.Round, error) {
	p.Rounds = min(p.Rounds, 1)
	if p.Rounds == 0 {
		return nil, nil
	}
	l := newLadder(&p)
	if levels := l.n.Levels(); levels != nil {
		for i := range l.place {
			l.place[i] = -float64(levels[i]) // before anybody has played, the level is the rung
		}
	}
	r, err := l.round()
	if err != nil {
		return nil, err
	}
	return []night.Round{r}, nil
}

// ladder is the state between two rounds.
type ladder struct {
	n     *night.Night
	d     *dice.Dice
	place []float64      // where each person belongs: the smaller the higher
	mate  []night.Player // the partner of the last game
	met   []night.Tally  // at a·people + b
}

func newLadder(p *night.Problem) *ladder {
	p.Together = slices.DeleteFunc(slices.Clone(p.Together), func(t night.Pair) bool { return t.Times == 0 })
	n := night.New(p)
	l := &ladder{n: n, d: dice.New(p.Seed, 3), place: make([]float64, n.People), mate: make([]night.Player, n.People)}
	for i := range l.place {
		l.place[i], l.mate[i] = float64(len(p.Courts)), night.Nobody // new people start at the bottom
	}
	for _, round := range p.History {
		for _, g := range round.Games {
			for _, i := range n.OnlyKnown(g.Players()) {
				l.place[i] = float64(g.Court)
			}
		}
	}
	l.met = make([]night.Tally, n.People*n.People)
	for _, g := range p.Earlier() {
		night.CountMeetings(l.met, n.People, g.Seats())
	}
	return l
}

// enter moves the people of a finished game.
func (l *ladder) enter(r Result) error {
	g := r.Game
	if g.Court < 0 || int(g.Court) >= len(l.n.Problem.Courts) || len(l.n.OnlyKnown(g.Players())) != len(g.Players()) {
		return fmt.Errorf("a result names a court or a person who is not in the list: enter the games that were called")
	}
	up, down := g.A, g.B
	if r.Winner == 1 || r.Winner == -1 && l.d.Roll(2) == 1 {
		up, down = down, up
	}
	for k := range 2 {
		l.move(up[k], up[1-k], float64(g.Court)-1)
		l.move(down[k], down[1-k], float64(g.Court)+1)
	}
	return nil
}

func (l *ladder) move(i, partner night.Player, to float64) {
	if i != night.Nobody {
		l.place[i], l.mate[i] = to, partner
	}
}

// round chooses who plays, puts them on the courts by their places and splits each four.
func (l *ladder) round() (night.Round, error) {
	n := l.n
	line := lineup.Draw(n, n.First, len(n.OpenCourts(n.First)), lineup.NewRecord(n), l.d)
	var players []night.Player
	for _, court := range line.Units {
		for _, u := range court {
			players = append(players, u.A)
		}
	}
	dice.Shuffle(l.d, players)
	slices.SortStableFunc(players, func(x, y night.Player) int { return cmp.Compare(l.place[x], l.place[y]) })
	courts := slices.Clone(line.Courts)
	slices.Sort(courts)
	var round night.Round
	players = append(players, line.Out...)
	l.keepApart(courts, players)
	round.Out = players[4*len(courts):]
	for k, c := range courts {
		g, broken := l.split(c, players[4*k:4*k+4])
		if broken > 0 {
			return night.Round{}, &night.Conflict{Reasons: []string{fmt.Sprintf(
				"the four of %s in round %d cannot be seated without breaking a keep-apart or a court wall", n.Problem.NameOfCourt(c), n.First+1)}}
		}
		round.Games = append(round.Games, g)
	}
	return round, nil
}

// keepApart exchanges people with other courts, the nearest first, and at last with the bench, which
// follows the courts in the list, until no court holds people who cannot be seated.
func (l *ladder) keepApart(courts []night.Court, players []night.Player) {
	outs := l.n.PastOuts()
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
			slices.SortStableFunc(players[4*k:4*k+4], func(x, y night.Player) int { return cmp.Compare(outs[x], outs[y]) })
			slices.SortStableFunc(players[4*len(courts):], func(x, y night.Player) int { return cmp.Compare(outs[y], outs[x]) })
			l.exchange(players, k, len(courts), len(players), bad)
		}
	}
}

// exchange tries all exchanges of court k with the places of court or bench h, which end before end,
// until nothing is broken on k.
func (l *ladder) exchange(players []night.Player, k, h, end int, bad func(int) int) {
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
func (l *ladder) split(c night.Court, four []night.Player) (best night.Game, broken int) {
	least := -1
	for way := range 3 {
		x := [3][4]int{{0, 3, 1, 2}, {0, 2, 1, 3}, {0, 1, 2, 3}}[way]
		g := night.Game{Court: c, A: night.Team{four[x[0]], four[x[1]]}, B: night.Team{four[x[2]], four[x[3]]}}
		bad := l.broken(g)
		if cost := 1<<20*bad + l.cost(g); least < 0 || cost < least {
			best, least, broken = g, cost, bad
		}
	}
	return best, broken
}

// broken counts what a game breaks of what is asked.
func (l *ladder) broken(g night.Game) int {
	bad := 0
	players := g.Players()
	for x, i := range players {
		bad += night.One(!l.n.MayPlayOn(i, g.Court))
		for _, j := range players[:x] {
			if w := l.n.Wishes; w != nil {
				bad += night.One(w.Apart[w.At(i, j)]) + night.One(w.Unteam[w.At(i, j)] && g.Partners(i, j))
			}
		}
	}
	return bad
}

// cost is how little a split is liked.
func (l *ladder) cost(g night.Game) int {
	sum, gap := 0, 0
	for k, t := range [2]night.Team{g.A, g.B} {
		sum += 1000*night.One(l.mate[t[0]] == t[1]) + 100*int(l.met[int(t[0])*l.n.People+int(t[1])].P)
		for _, i := range t {
			gap += (1 - 2*k) * int(10*l.n.Problem.People[i].Level)
		}
	}
	return sum + min(99, max(gap, -gap))
}
