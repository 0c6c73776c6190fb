package scheduler

// measures are a night's values, counted from its rounds.
type measures struct {
	pairBounds         // repeats, partners, opponents and meetings as they are
	pair       []tally // at a·people + b: how often two people met
	twice      int     // sit-outs right after a sit-out
	outs       []int   // each person's sit-outs
	games      []int   // each person's doubles games in the rounds after the history
	singles    bool    // singles were played in those
	throughout []bool  // who was there in every round
	onCourt    [][]int // games of each person on each court that was used
}

// measure counts the whole night: the history of n's problem, then the rounds.
func measure(n *night, rounds []Round) *measures {
	m := &measures{
		outs: make([]int, n.people), games: make([]int, n.people),
		throughout: make([]bool, n.people), onCourt: make([][]int, n.people),
	}
	all := append(append([]Round(nil), n.p.History...), rounds...)
	there := make([]int, n.people)
	last := make([]int, n.people) // round of the last sit-out, from 1
	m.pair = make([]tally, n.people*n.people)
	for _, g := range n.p.Met {
		countMeetings(m.pair, n.people, g.seats())
	}
	for r, round := range all {
		for _, i := range n.here[r] {
			there[i]++
		}
		for _, i := range n.valid(round.Out) {
			m.outs[i]++
			if r > 0 && last[i] == r {
				m.twice++
			}
			last[i] = r + 1
		}
		for _, g := range round.Games {
			countMeetings(m.pair, n.people, g.seats())
			if r >= n.first {
				m.countGame(n, g)
			}
		}
	}
	for i := range m.throughout {
		m.throughout[i] = there[i] == len(all)
	}
	m.countCourts(n, all)
	m.pairBounds = (&scope{n: n, past: m.pair}).settled()
	return m
}

func (m *measures) countGame(n *night, g Game) {
	if g.Singles() {
		m.singles = true
		return
	}
	for _, i := range n.valid(g.Players()) {
		m.games[i]++
	}
}

// valid returns those of the people who are of the problem.
func (n *night) valid(people []Player) []Player {
	var known []Player
	for _, i := range people {
		if n.known(i) {
			known = append(known, i)
		}
	}
	return known
}

// distinct returns the people of the problem among those named, each once, in ascending order.
func (n *night) distinct(named []Player) []Player {
	is := make([]bool, n.people)
	for _, i := range n.valid(named) {
		is[i] = true
	}
	var out []Player
	for i, yes := range is {
		if yes {
			out = append(out, Player(i))
		}
	}
	return out
}

// countCourts counts each person's games on each court that saw a game that night.
func (m *measures) countCourts(n *night, all []Round) {
	index := make(map[Court]int)
	for _, round := range all {
		for _, g := range round.Games {
			if _, ok := index[g.Court]; !ok {
				index[g.Court] = len(index)
			}
		}
	}
	for i := range m.onCourt {
		m.onCourt[i] = make([]int, len(index))
	}
	for _, round := range all {
		for _, g := range round.Games {
			for _, i := range n.valid(g.Players()) {
				m.onCourt[i][index[g.Court]]++
			}
		}
	}
}

// spread is the difference between most and fewest sit-outs among those present throughout.
func (m *measures) spread() int {
	low, high := -1, -1
	for i, outs := range m.outs {
		if !m.throughout[i] {
			continue
		}
		if low < 0 {
			low, high = outs, outs
		}
		low, high = min(low, outs), max(high, outs)
	}
	return high - low
}

// courtSpread sums over people the difference between most and fewest games on a court.
func (m *measures) courtSpread() int {
	sum := 0
	for _, counts := range m.onCourt {
		sum += rangeOf(counts)
	}
	return sum
}

// rangeOf is the greatest less the least of the numbers.
func rangeOf(counts []int) int {
	if len(counts) == 0 {
		return 0
	}
	low, high := counts[0], counts[0]
	for _, c := range counts[1:] {
		low, high = min(low, c), max(high, c)
	}
	return high - low
}
