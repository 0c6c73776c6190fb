package measure

import (
	"club/quadrille/scheduler/night"
)

// Counts are a night's values, counted from its rounds.
type Counts struct {
	PairSums                 // repeats, partners, opponents and meetings as they are
	Pair       []night.Tally // at a·people + b: how often two people met
	Twice      int           // sit-outs right after a sit-out
	Longest    int           // most rounds that somebody sat out running
	Outs       []int         // each person's sit-outs
	Games      []int         // each person's doubles games in the rounds after the history
	Singles    bool          // singles were played in those
	Throughout []bool        // who was there in every round
	OnCourt    [][]int       // games of each person on each court that was used
}

// Count counts the whole night: the history of n's problem, then the rounds.
func Count(n *night.Night, rounds []night.Round) *Counts {
	m := &Counts{
		Outs: make([]int, n.People), Games: make([]int, n.People),
		Throughout: make([]bool, n.People), OnCourt: make([][]int, n.People),
	}
	all := append(append([]night.Round(nil), n.Problem.History...), rounds...)
	there := make([]int, n.People)
	last := make([]int, n.People) // round of the last sit-out, from 1
	run := make([]int, n.People)  // sit-outs running up to then
	m.Pair = make([]night.Tally, n.People*n.People)
	for _, g := range n.Problem.Met {
		night.CountMeetings(m.Pair, n.People, g.Seats())
	}
	for r, round := range all {
		for _, i := range n.Here[r] {
			there[i]++
		}
		for _, i := range n.OnlyKnown(round.Out) {
			m.Outs[i]++
			if run[i]++; r == 0 || last[i] != r {
				run[i] = 1
			}
			m.Twice += night.One(run[i] > 1)
			m.Longest = max(m.Longest, run[i])
			last[i] = r + 1
		}
		for _, g := range round.Games {
			night.CountMeetings(m.Pair, n.People, g.Seats())
			if r >= n.First {
				m.countGame(n, g)
			}
		}
	}
	for i := range m.Throughout {
		m.Throughout[i] = there[i] == len(all)
	}
	m.countCourts(n, all)
	m.PairSums = SumPairs(m.Pair, n.People)
	return m
}

func (m *Counts) countGame(n *night.Night, g night.Game) {
	if g.Singles() {
		m.Singles = true
		return
	}
	for _, i := range n.OnlyKnown(g.Players()) {
		m.Games[i]++
	}
}

// countCourts counts each person's games on each court that saw a game that night.
func (m *Counts) countCourts(n *night.Night, all []night.Round) {
	index := make(map[night.Court]int)
	for _, round := range all {
		for _, g := range round.Games {
			if _, ok := index[g.Court]; !ok {
				index[g.Court] = len(index)
			}
		}
	}
	for i := range m.OnCourt {
		m.OnCourt[i] = make([]int, len(index))
	}
	for _, round := range all {
		for _, g := range round.Games {
			for _, i := range n.OnlyKnown(g.Players()) {
				m.OnCourt[i][index[g.Court]]++
			}
		}
	}
}

// Spread is the difference between most and fewest sit-outs among those present throughout.
func (m *Counts) Spread() int {
	low, high := -1, -1
	for i, outs := range m.Outs {
		if !m.Throughout[i] {
			continue
		}
		if low < 0 {
			low, high = outs, outs
		}
		low, high = min(low, outs), max(high, outs)
	}
	return high - low
}

// CourtSpread sums over people the difference between most and fewest games on a court.
func (m *Counts) CourtSpread() int {
	sum := 0
	for _, counts := range m.OnCourt {
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
