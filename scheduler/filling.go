package scheduler

import (
	"cmp"
	"slices"
)

// filling puts units of people on the courts of one round, as many as the courts hold, by augmenting
// paths: a unit that finds its courts full asks those already there to move on. For units of one
// person this finds every possible filling, and taking units in order of urgency seats the
// most urgent set that can be seated (the sets that can be matched form a matroid: Edmonds &
// Fulkerson, J. Res. NBS 69B (1965) 147-153).
type filling struct {
	n      *night
	courts []Court
	units  []unit
	at     []int    // court index of each unit, or -1
	held   [][]int  // units on each court
	free   [][2]int // free seats of each court, for mixed nights by group
	asked  []bool   // courts asked on the current path
}

func newFilling(n *night, courts []Court, units []unit) *filling {
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
		if n.side != nil {
			f.free[c] = [2]int{2, 2}
		}
	}
	return f
}

// need is how many seats of each group the unit takes.
func (f *filling) need(u int) (need [2]int) {
	for _, i := range [2]Player{f.units[u].a, f.units[u].b} {
		switch {
		case i == Nobody:
		case f.n.side == nil:
			need[0]++
		default:
			need[f.n.side[i]]++
		}
	}
	return need
}

// suits tells whether all of the unit may play on the court.
func (f *filling) suits(u, c int) bool {
	x := f.units[u]
	return f.n.fits(x.a, f.courts[c]) && (x.b == Nobody || f.n.fits(x.b, f.courts[c]))
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
	if f.n.walls == nil {
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
		if f.at[u] < 0 || f.units[u].size() != 1 {
			continue
		}
		for v := range f.units {
			if f.at[v] >= 0 || f.units[v].size() != 2 {
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

// lineup is who plays where in one round.
type lineup struct {
	courts []Court
	units  [][]unit // on each court
	out    []Player
}

// lineup fills round r with at most so many games, fewer if walls, couples or rests leave a court
// without four people.
func (n *night) lineup(r, most int, l *ledger, d *dice) lineup {
	units := n.queue(r, l, d)
	if k := n.p.MaxRun; k > 0 {
		units = slices.DeleteFunc(units, func(u unit) bool { return u.run >= k })
	}
	courts, most := n.choose(r, most)
	return n.fill(courts, most, units).lineup(n.here[r])
}

// fill seats units on as many of the courts as it can but at most so many: on all, else on all but one,
// and so on, at last on any single one.
func (n *night) fill(courts []Court, most int, units []unit) *filling {
	all := courts
	f := newFilling(n, courts, units)
	if f.fill() && len(courts) <= most {
		return f
	}
	for len(courts) > 1 && most > 0 {
		for c := len(courts) - 1; c >= 0 && len(courts) <= most+1; c-- {
			if g := newFilling(n, without(courts, c), units); g.fill() {
				return g
			}
			if n.walls == nil {
				break // all courts are alike
			}
		}
		courts = without(courts, f.emptiest())
		f = newFilling(n, courts, units)
		f.fill()
	}
	for _, c := range all[:len(all)*one(most > 0)] {
		if g := newFilling(n, []Court{c}, units); g.fill() {
			return g
		}
	}
	return newFilling(n, nil, units)
}

func without(courts []Court, c int) []Court {
	return slices.Delete(slices.Clone(courts), c, c+1)
}

// choose picks the courts to use and says how many at most. Where walls stand it returns all that could
// be used, those first on which most of the people present may play: dropping what stays empty finds
// more games than guessing.
func (n *night) choose(r, most int) ([]Court, int) {
	open := n.openCourts(r)
	games := min(most, n.restful(r, n.mostGames(r, len(open))))
	if n.walls == nil {
		return open[:games], games
	}
	count := make([]int, len(n.p.Courts))
	for _, c := range open {
		for _, i := range n.here[r] {
			if n.fits(i, c) {
				count[c]++
			}
		}
	}
	open = slices.DeleteFunc(open, func(c Court) bool { return count[c] < 4 })
	slices.SortStableFunc(open, func(a, b Court) int { return cmp.Compare(count[b], count[a]) })
	return open, games
}

// lineup reads off who plays where.
func (f *filling) lineup(here []Player) lineup {
	var l lineup
	plays := make([]bool, f.n.people)
	for c, held := range f.held {
		var units []unit
		for _, u := range held {
			units = append(units, f.units[u])
			plays[f.units[u].a] = true
			if b := f.units[u].b; b != Nobody {
				plays[b] = true
			}
		}
		l.courts = append(l.courts, f.courts[c])
		l.units = append(l.units, units)
	}
	for _, i := range here {
		if !plays[i] {
			l.out = append(l.out, i)
		}
	}
	return l
}
