package scheduler

// memory is who met whom in the games called so far tonight.
type memory struct {
	people int
	pair   []tally
	latest []int // each person's last game, counted from 1
	games  int
}

func newMemory(people int, played []Game) *memory {
	m := &memory{people: people, pair: make([]tally, people*people), latest: make([]int, people)}
	for _, g := range played {
		m.add(g)
	}
	return m
}

// add enters a game and returns what takes it out again; the newest must go out first.
func (m *memory) add(g Game) (undo func()) {
	seats := g.seats()
	var last [4]int
	var met [4][4]tally
	each := func(do func(x int, i Player)) {
		for x, i := range seats {
			if i >= 0 && int(i) < m.people {
				do(x, i)
			}
		}
	}
	each(func(x int, i Player) {
		last[x] = m.latest[i]
		each(func(y int, j Player) { met[x][y] = m.of(i, j) })
	})
	countMeetings(m.pair, m.people, seats)
	m.games++
	each(func(_ int, i Player) { m.latest[i] = m.games })
	return func() {
		m.games--
		each(func(x int, i Player) {
			m.latest[i] = last[x]
			each(func(y int, j Player) { m.pair[int(i)*m.people+int(j)] = met[x][y] })
		})
	}
}

// of is how often two people partnered and opposed.
func (m *memory) of(i, j Player) tally { return m.pair[int(i)*m.people+int(j)] }

// last tells whether the last game of both was the same, so that they came off together.
func (m *memory) last(i, j Player) bool { return m.latest[i] > 0 && m.latest[i] == m.latest[j] }
