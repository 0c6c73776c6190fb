package rolling

import (
	"club/quadrille/scheduler/night"
)

// memory is who met whom in the games called so far tonight.
type memory struct {
	people int
	pair   []night.Tally
	latest []int // each person's last game, counted from 1
	games  int
}

func newMemory(people int, played []night.Game) *memory {
	m := &memory{people: people, pair: make([]night.Tally, people*people), latest: make([]int, people)}
	for _, g := range played {
		m.add(g)
	}
	return m
}

// add enters a game and returns what takes it out again; the newest must go out first.
func (m *memory) add(g night.Game) (undo func()) {
	seats := g.Seats()
	var last [4]int
	var met [4][4]night.Tally
	each := func(do func(x int, i night.Player)) {
		for x, i := range seats {
			if i >= 0 && int(i) < m.people {
				do(x, i)
			}
		}
	}
	each(func(x int, i night.Player) {
		last[x] = m.latest[i]
		each(func(y int, j night.Player) { met[x][y] = m.of(i, j) })
	})
	night.CountMeetings(m.pair, m.people, seats)
	m.games++
	each(func(_ int, i night.Player) { m.latest[i] = m.games })
	return func() {
		m.games--
		each(func(x int, i night.Player) {
			m.latest[i] = last[x]
			each(func(y int, j night.Player) { m.pair[int(i)*m.people+int(j)] = met[x][y] })
		})
	}
}

// of is how often two people partnered and opposed.
func (m *memory) of(i, j night.Player) night.Tally { return m.pair[int(i)*m.people+int(j)] }

// last tells whether the last game of both was the same, so that they came off together.
func (m *memory) last(i, j night.Player) bool { return m.latest[i] > 0 && m.latest[i] == m.latest[j] }
