package design

// MixedRotation returns a rotation for two groups of any sizes of at least two: men 0..men-1 and
// women men..men+women-1, one of each in every team (men on seats 0 and 2), as many games a round as
// the smaller group fills. It has as many rounds as the larger group has people, and nobody partners
// anybody twice.
//
// In round r man i of the smaller group plays with woman x(i) + r, counted modulo the larger group,
// where the x are spread evenly: the larger group sits out in turn, as rarely twice running as can
// be. Who opposes whom is taken from the rounds of a circle tournament of the smaller group, for
// each round the one that makes the fewest repeats with all others. For equal groups that a
// spouse-avoiding design fits, that design is used, and a last round for the "spouses" if their
// number is even. ok is false for groups of less than two.
func MixedRotation(men, women int) (rounds [][]Table, ok bool) {
	if men < 2 || women < 2 {
		return nil, false
	}
	if men > women { // build it the other way round and change names and seats
		rounds, _ = MixedRotation(women, men)
		for r, round := range rounds {
			rounds[r] = relabelRound(round, func(p int) int { return (p + men) % (men + women) })
			for i, t := range rounds[r] {
				rounds[r][i] = Table{t[1], t[0], t[3], t[2]}
			}
		}
		return rounds, true
	}
	if men == women {
		if rounds, ok := SpouseAvoiding(men); ok && len(rounds) <= men {
			if men%2 == 0 {
				rounds = append(rounds, spousesTogether(men))
			}
			return rounds, true
		}
	}
	m := newMixer(men, women)
	m.improve()
	return m.rounds(), true
}

// spousesTogether is the round of an even number of couples in which spouses partner.
func spousesTogether(couples int) (round []Table) {
	for i := 0; i < couples; i += 2 {
		round = append(round, Table{i, couples + i, i + 1, couples + i + 1})
	}
	return round
}

// mixer chooses, for each round of a mixed rotation, which men oppose each other.
type mixer struct {
	men, women int
	pairings   [][][2]int // rounds of a circle tournament of the men
	choice     []int      // for each round, its pairing
	opposed    []int      // how often each two people oppose
	benched    []int      // how often each man sits out, and each woman
}

func newMixer(men, women int) *mixer {
	people := men + women
	m := &mixer{
		men: men, women: women, pairings: Berger(men), choice: make([]int, women),
		opposed: make([]int, people*people), benched: make([]int, people),
	}
	for r := range m.choice {
		m.choice[r] = r % len(m.pairings)
		m.count(r, 1)
	}
	return m
}

// table seats man i and man j with their partners of round r.
func (m *mixer) table(r, i, j int) Table {
	woman := func(i int) int { return m.men + (i*m.women/m.men+r)%m.women }
	return Table{i, woman(i), j, woman(j)}
}

// count adds (sign 1) or takes away (-1) a round and returns the cost of it beside all others: its
// repeated opponents, and above these the sit-outs of those who have had most.
func (m *mixer) count(r, sign int) (cost int) {
	playing := make([]bool, m.men+m.women)
	for _, pair := range m.pairings[m.choice[r]] {
		t := m.table(r, pair[0], pair[1])
		for _, a := range t[:2] {
			for _, b := range t[2:] {
				at := max(a, b)*(m.men+m.women) + min(a, b)
				m.opposed[at] += min(sign, 0)
				cost += m.opposed[at]
				m.opposed[at] += max(sign, 0)
			}
		}
		for _, p := range t {
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

// improve exchanges the pairing of one round after the other for a better one until all are the
// best beside the others.
func (m *mixer) improve() {
	for changed := true; changed; {
		changed = false
		for r := range m.choice {
			best := m.choice[r]
			least := m.count(r, -1)
			for c := range m.pairings {
				m.choice[r] = c
				cost := m.count(r, 1)
				m.count(r, -1)
				if cost < least {
					best, least, changed = c, cost, true
				}
			}
			m.choice[r] = best
			m.count(r, 1)
		}
	}
}

// rounds returns the rotation as chosen.
func (m *mixer) rounds() [][]Table {
	rounds := make([][]Table, len(m.choice))
	for r, c := range m.choice {
		for _, pair := range m.pairings[c] {
			rounds[r] = append(rounds[r], m.table(r, pair[0], pair[1]))
		}
	}
	return rounds
}
