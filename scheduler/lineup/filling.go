package lineup

import (
	"slices"

	"club/quadrille/scheduler/night"
)

// filling puts units of people on the courts of one round, as many as the courts hold, by augmenting
// paths: a unit that finds its courts full asks those already there to move on. For units of one
// person this finds every possible filling, and taking units in order of urgency seats the
// most urgent set that can be seated (the sets that can be matched form a matroid: Edmonds &
// Fulkerson, J. Res. NBS 69B (1965) 147-153).
type filling struct {
	n      *night.Night
	courts []night.Court
	units  []Unit
	at     []int    // court index of each unit, or -1
	held   [][]int  // units on each court
	free   [][2]int // free seats of each court, for mixed nights by group
	asked  []bool   // courts asked on the current path
}

func newFilling(n *night.Night, courts []night.Court, units []Unit) *filling {
	f := &filling{
		n: n, courts: courts, units: units,
		at: make([]int, len(units)), held: make([][]int, len(courts)),
		free: make([][2]int, len(courts)), asked: make([]bool, len(courts)),
	}
	for u := range f.at {
		f.at[u] = -1
	}
	for c := range f.free {
		f.free[c] = [2]int{4, 0}
		if n.Side != nil {
			f.free[c] = [2]int{2, 2}
		}
	}
	return f
}

// need is how many seats of each group the unit takes.
func (f *filling) need(u int) (need [2]int) {
	for _, i := range [2]night.Player{f.units[u].A, f.units[u].B} {
		switch {
		case i == night.Nobody:
		case f.n.Side == nil:
			need[0]++
		default:
			need[f.n.Side[i]]++
		}
	}
	return need
}

// suits tells whether all of the unit may play on the court.
func (f *filling) suits(u, c int) bool {
	x := f.units[u]
	return f.n.MayPlayOn(x.A, f.courts[c]) && (x.B == night.Nobody || f.n.MayPlayOn(x.B, f.courts[c]))
}

func (f *filling) room(u, c int) bool {
	need := f.need(u)
	return f.free[c][0] >= need[0] && f.free[c][1] >= need[1]
}

func (f *filling) put(u, c int) {
	need := f.need(u)
	f.free[c][0] -= need[0]
	f.free[c][1] -= need[1]
	f.held[c] = append(f.held[c], u)
	f.at[u] = c
}

func (f *filling) take(u int) {
	c, need := f.at[u], f.need(u)
	f.free[c][0] += need[0]
	f.free[c][1] += need[1]
	f.held[c] = slices.DeleteFunc(f.held[c], func(x int) bool { return x == u })
	f.at[u] = -1
}

// place seats the unit, moving others if it must, and tells whether it could.
func (f *filling) place(u int) bool {
	clear(f.asked)
	return f.push(u)
}

func (f *filling) push(u int) bool {
	for c := range f.courts {
		if !f.asked[c] && f.suits(u, c) && f.room(u, c) {
			f.put(u, c)
			return true
		}
	}
	if f.n.Walls == nil {
		return false // all courts are alike: moving others makes no room
	}
	for c := range f.courts {
		if f.asked[c] || !f.suits(u, c) {
			continue
		}
		f.asked[c] = true
		for _, v := range slices.Clone(f.held[c]) {
			if f.need(v) != f.need(u) {
				continue
			}
			f.take(v)
			if f.push(v) {
				f.put(u, c)
				return true
			}
			f.put(v, c)
		}
	}
	return false
}

// fill seats units in their order until the courts are full, and tells whether they are.
func (f *filling) fill() bool {
	for u := range f.units {
		if f.full() {
			break
		}
		f.place(u)
	}
	return f.full() || f.makeRoom()
}

func (f *filling) full() bool {
	for _, free := range f.free {
		if free != [2]int{} {
			return false
		}
	}
	return true
}

// makeRoom helps when seats are left that only couples could take: singles step back for couples, as
// long as that leaves fewer seats empty.
func (f *filling) makeRoom() bool {
	for f.swapIn() {
		if f.full() {
			return true
		}
	}
	return false
}

// swapIn lets one single, the least urgent that helps, step back for a couple.
func (f *filling) swapIn() bool {
	for u := len(f.units) - 1; u >= 0; u-- {
		if f.at[u] < 0 || f.units[u].Size() != 1 {
			continue
		}
		for v := range f.units {
			if f.at[v] >= 0 || f.units[v].Size() != 2 {
				continue
			}
			g := f.clone()
			g.take(u)
			if g.place(v) {
				*f = *g
				return true
			}
		}
	}
	return false
}

func (f *filling) clone() *filling {
	g := *f
	g.at, g.free, g.held = slices.Clone(f.at), slices.Clone(f.free), slices.Clone(f.held)
	for c := range g.held {
		g.held[c] = slices.Clone(g.held[c])
	}
	return &g
}

// emptiest returns the court with most free seats, the last of equals.
func (f *filling) emptiest() int {
	worst := 0
	for c, free := range f.free {
		if sum := free[0] + free[1]; sum >= f.free[worst][0]+f.free[worst][1] {
			worst = c
		}
	}
	return worst
}
