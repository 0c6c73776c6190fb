package scheduler

// memory is who met whom in the games called so far tonight.
type memory struct {
	people int
	pair   []tally
	latest []int // each person's last game, counted from 1
}

func newMemory(people int, played []Game) *memory {
	m := &memory{people, make([]tally, people*people), make([]int, people)}
	for k, g := range played {
		countMeetings(m.pair, people, g.seats())
		for _, i := range g.Players() {
			if i >= 0 && int(i) < people {
				m.latest[i] = k + 1
			}
		}
	}
	return m
}

// of is how often two people partnered and opposed.
func (m *memory) of(i, j Player) tally { return m.pair[int(i)*m.people+int(j)] }

// last tells whether the last game of both was the same, so that they came off together.
func (m *memory) last(i, j Player) bool { return m.latest[i] > 0 && m.latest[i] == m.latest[j] }
