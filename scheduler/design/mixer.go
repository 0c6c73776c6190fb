package design

import "slices"

// mixer chooses, for each round of a mixed rotation, which men oppose each other.
type mixer struct {
	men, women int
	offset     []int      // man i plays with woman offset[i] + r in round r
	pairings   [][][2]int // rounds of a circle tournament of the men
	choice     []int      // for each round, its pairing
	opposed    []int      // how often each two people oppose
	benched    []int      // how often each person sits out
}

func newMixer(men, women int) *mixer {
	people := men + women
	m := &mixer{
		men: men, women: women, pairings: Berger(men),
		opposed: make([]int, people*people), benched: make([]int, people),
	}
	if men%2 == 0 || !m.share() {
		m.spread()
	}
	for r := range m.choice {
		m.count(r, 1)
	}
	return m
}

// spread sets the offsets of an even number of men as far from each other as can be, so that the
// women between them are few and sit out rarely twice running.
func (m *mixer) spread() {
	for i := range m.men {
		m.offset = append(m.offset, i*m.women/m.men)
	}
	for r := range m.women {
		m.choice = append(m.choice, r%len(m.pairings))
	}
}

// share sets the offsets of an odd number of men, one of whom sits out each round together with the
// woman who would be his partner, such that all men and all women have equal turns. The rounds are
// cut into one interval for each man, in which he sits out; his offset moves his interval to its
// place when the intervals are laid in another order, so that the women left over are all
// different. The order is one that makes the offsets different too; share tells whether it found one,
// as it does for all groups to 100 and 200 people.
func (m *mixer) share() bool {
	turn := func(i int) int { return i * m.women / m.men } // first round of man i's interval
	for step := m.men - 1; len(m.offset) == 0; step-- {
		if step == 0 {
			return false
		}
		offset := make([]int, m.men)
		taken := make([]bool, m.women)
		start, distinct := 0, true
		for k := range m.men {
			i := k * step % m.men
			offset[i] = (start - turn(i) + m.women) % m.women
			start += turn(i+1) - turn(i)
			distinct = distinct && !taken[offset[i]]
			taken[offset[i]] = true
		}
		if distinct && gcd(step, m.men) == 1 {
			m.offset = offset
		}
	}
	for i := range m.men {
		rest := slices.IndexFunc(m.pairings, func(pairs [][2]int) bool {
			return !slices.ContainsFunc(pairs, func(p [2]int) bool { return p[0] == i || p[1] == i })
		})
		for range turn(i+1) - turn(i) {
			m.choice = append(m.choice, rest)
		}
	}
	return true
}

func gcd(a, b int) int {
	for b > 0 {
		a, b = b, a%b
	}
	return a
}

// table seats man i and man j with their partners of round r.
func (m *mixer) table(r, i, j int) Table {
	woman := func(i int) int { return m.men + (m.offset[i]+r)%m.women }
	return Table{i, woman(i), j, woman(j)}
}

// count adds (sign 1) or takes away (-1) a round and returns the cost of it beside all others: its
// repeated opponents, and above these the sit-outs of those who have had most.
func (m *mixer) count(r, sign int) (cost int) {
	pairs := m.pairings[m.choice[r]]
	for _, pair := range pairs {
		t := m.table(r, pair[0], pair[1])
		for _, a := range t[:2] {
			for _, b := range t[2:] {
				at := max(a, b)*(m.men+m.women) + min(a, b)
				m.opposed[at] += min(sign, 0)
				cost += m.opposed[at]
				m.opposed[at] += max(sign, 0)
			}
		}
	}
	if m.men%2 == 0 { // who sits out does not depend on the pairing
		return cost
	}
	playing := make([]bool, m.men+m.women)
	for _, pair := range pairs {
		for _, p := range m.table(r, pair[0], pair[1]) {
			playing[p] = true
		}
	}
	for p, plays := range playing {
		if !plays {
			m.benched[p] += min(sign, 0)
			cost += benchCost * m.benched[p]
			m.benched[p] += max(sign, 0)
		}
	}
	return cost
}

// benchCost is how much worse one more sit-out of somebody is than one more repeat.
const benchCost = 64

// improve changes the pairing of one round, and exchanges those of two, while that helps, but not for
// long: what further passes over big groups find is little.
func (m *mixer) improve() {
	changed := true
	for pass := 0; changed && pass < maxPasses; pass++ {
		changed = false
		for r := range m.choice {
			changed = m.reconsider(r) || changed
		}
		for r := range min(m.women, maxTraded) {
			for s := range r {
				changed = m.trade(r, s) || changed
			}
		}
	}
}

// Bounds of the search: passes over all rounds, and rounds among which pairings are exchanged.
const (
	maxPasses = 8
	maxTraded = 48
)

// reconsider gives a round the best pairing beside the others and tells whether that is a better one.
func (m *mixer) reconsider(r int) bool {
	old := m.choice[r]
	best, least := old, m.count(r, -1)
	for c := range m.pairings {
		m.choice[r] = c
		cost := m.count(r, 1)
		m.count(r, -1)
		if cost < least {
			best, least = c, cost
		}
	}
	m.choice[r] = best
	m.count(r, 1)
	return best != old
}

// trade exchanges the pairings of two rounds if that is better.
func (m *mixer) trade(r, s int) bool {
	if m.choice[r] == m.choice[s] {
		return false
	}
	before := m.count(r, -1) + m.count(s, -1)
	m.choice[r], m.choice[s] = m.choice[s], m.choice[r]
	after := m.count(s, 1) + m.count(r, 1)
	if after < before {
		return true
	}
	m.count(r, -1)
	m.count(s, -1)
	m.choice[r], m.choice[s] = m.choice[s], m.choice[r]
	m.count(s, 1)
	m.count(r, 1)
	return false
}

// rounds returns the rotation as chosen, in an order in which few people sit out twice running.
func (m *mixer) rounds() [][]Table {
	rest := make([][]Table, len(m.choice))
	for r, c := range m.choice {
		for _, pair := range m.pairings[c] {
			rest[r] = append(rest[r], m.table(r, pair[0], pair[1]))
		}
	}
	rounds := rest[:1:1]
	for rest = rest[1:]; len(rest) > 0; {
		next, least := 0, m.men+m.women
		for i, round := range rest {
			if n := m.idleInBoth(rounds[len(rounds)-1], round); n < least {
				next, least = i, n
			}
		}
		rounds = append(rounds, rest[next])
		rest = slices.Delete(rest, next, next+1)
	}
	return rounds
}

// idleInBoth counts the people who play in neither of two rounds.
func (m *mixer) idleInBoth(a, b []Table) int {
	plays := make([]bool, m.men+m.women)
	for _, round := range [][]Table{a, b} {
		for _, t := range round {
			for _, p := range t {
				plays[p] = true
			}
		}
	}
	idle := 0
	for _, p := range plays {
		if !p {
			idle++
		}
	}
	return idle
}
