package rating

import (
	"cmp"
	"math"
	"slices"
)

// links are who played with and against whom in many games. Its groups are those of a [Design] of the same games,
// found in a time that grows with the games and not with the square of the people.
type links struct {
	seats []int    // who played, game after game, side a first
	ends  [][2]int // of each game: where its side a ends in seats, and where its side b does
	n     int
	work  int // seats looked at while groups were sought, for tests
}

// add takes in one game between the people a and b, who are numbered from 0.
func (l *links) add(a, b []int) {
	l.seats = append(append(l.seats, a...), b...)
	l.ends = append(l.ends, [2]int{len(l.seats) - len(b), len(l.seats)})
	for _, p := range l.seats[len(l.seats)-len(a)-len(b):] {
		l.n = max(l.n, p+1)
	}
}

// patience is how many entries elimination may look at for each seat of a game, and hasty how many in any case,
// before vectors drawn at random are tried. Where people play with those who are near them elimination needs
// few, and drawn vectors many; where anybody plays with anybody it is the other way round.
const (
	patience = 8
	hasty    = 20_000
)

// groups numbers the people as [Design.Groups] does. Whoever no chain of games links is in two parts and cannot
// be compared, so that parts are looked at one by one.
func (l *links) groups() []int {
	group := make([]int, l.n)
	leaders := 0
	for _, part := range l.parts() {
		of, ok := part.exact(max(hasty, patience*len(part.seats)))
		if !ok {
			of = part.sampled()
		}
		l.work += part.work
		for i, p := range part.people {
			group[p] = leaders + of[i]
		}
		leaders += slices.Max(of) + 1
	}
	return inOrder(group)
}

// inOrder numbers groups from 0 in the order of the people.
func inOrder(group []int) []int {
	number := map[int]int{}
	for i, g := range group {
		n, known := number[g]
		if !known {
			n = len(number)
			number[g] = n
		}
		group[i] = n
	}
	return group
}

// part is the games of people whom chains of games link, who are numbered anew.
type part struct {
	links
	people []int // their numbers before
}

// parts splits the games up.
func (l *links) parts() []*part {
	root := make([]int, l.n)
	for p := range root {
		root[p] = p
	}
	find := func(p int) int {
		for root[p] != p {
			root[p] = root[root[p]]
			p = root[p]
		}
		return p
	}
	from := 0
	for _, end := range l.ends {
		for _, p := range l.seats[from+1 : end[1]] {
			root[find(p)] = find(l.seats[from])
		}
		from = end[1]
	}
	var out []*part
	place, number := map[int]*part{}, make([]int, l.n)
	for p := range l.n {
		r := find(p)
		if place[r] == nil {
			place[r] = &part{}
			out = append(out, place[r])
		}
		number[p] = len(place[r].people)
		place[r].people = append(place[r].people, p)
	}
	from = 0
	for _, end := range l.ends {
		of := place[find(l.seats[from])]
		var seats [4]int
		who := seats[:0]
		for _, p := range l.seats[from:end[1]] {
			who = append(who, number[p])
		}
		of.add(who[:end[0]-from], who[end[0]-from:])
		from = end[1]
	}
	for _, p := range out {
		p.n = len(p.people)
	}
	return out
}

// exact finds the groups by elimination, unless it takes more than a number of entries.
func (p *part) exact(most int) (groups []int, ok bool) {
	d := Design{}
	d.grow(p.n)
	from, even := 0, true
	for _, end := range p.ends {
		a, b := p.seats[from:end[0]], p.seats[end[0]:end[1]]
		if even = even && len(a) == len(b); even && d.rank == p.n-1 {
			from = end[1]
			continue // all are compared, and a game of equal sides cannot say how good they are together
		}
		d.Add(a, b)
		if from = end[1]; d.effort > most {
			break
		}
	}
	p.work += d.effort
	return d.Groups(), d.effort <= most
}

// whole is exact, however long it takes.
func (p *part) whole() []int {
	groups, _ := p.exact(math.MaxInt)
	return groups
}

// What differs by less than near is the same, and what differs by more than far is not. Nothing should lie
// between; where something does, elimination decides.
const (
	near    = 1e-7
	far     = 1e-4
	samples = 3
)

// sampled finds the groups by some vectors drawn at random among those that no game sees: two people whom the
// games compare are moved alike by all of them, and two others almost surely are not.
func (p *part) sampled() []int {
	var moves [samples][]float64
	for k := range moves {
		var ok bool
		if moves[k], ok = p.unseen(uint64(k)); !ok {
			return p.whole()
		}
	}
	order := make([]int, p.n)
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Compare(moves[0][i], moves[0][j]) })
	group := make([]int, p.n)
	var leaders []int
	oldest := 0 // the first leader that may still be like whoever comes
	for _, i := range order {
		for oldest < len(leaders) && moves[0][i]-moves[0][leaders[oldest]] > far {
			oldest++
		}
		group[i] = -1
		for g := oldest; g < len(leaders); g++ {
			apart := 0.0
			for k := range moves {
				apart = max(apart, math.Abs(moves[k][i]-moves[k][leaders[g]]))
			}
			if apart <= near {
				group[i] = g
				break
			}
			if apart < far {
				return p.whole()
			}
		}
		if group[i] < 0 {
			group[i] = len(leaders)
			leaders = append(leaders, i)
		}
	}
	return inOrder(group)
}

// unseen draws a vector that no game sees: a random one less what the games see of it, found by conjugate
// gradients (M. R. Hestenes and E. Stiefel, "Methods of Conjugate Gradients for Solving Linear Systems", Journal of
// Research of the National Bureau of Standards 49 (1952) 409-436, in the form for least squares). Each
// person's column is scaled by the number of games. It is ok unless rounding keeps it from an end.
func (p *part) unseen(seed uint64) (v []float64, ok bool) {
	scale := make([]float64, p.n)
	for _, who := range p.seats {
		scale[who]++
	}
	v = make([]float64, p.n)
	for i := range v {
		v[i] = noise(seed, uint64(i))
		scale[i] = 1 / math.Sqrt(scale[i])
	}
	rest, step := make([]float64, len(p.ends)), make([]float64, len(p.ends))
	slope, way := make([]float64, p.n), make([]float64, p.n)
	for range 4 { // begun anew, it takes back what rounding has added up
		p.see(v, nil, rest)
		if largest(rest) < 1e-12 {
			return v, true
		}
		p.back(rest, scale, slope)
		copy(way, slope)
		size := square(slope)
		for range 2 * p.n {
			p.see(way, scale, step)
			length := size / square(step)
			for i := range v {
				v[i] -= length * scale[i] * way[i]
			}
			for i := range rest {
				rest[i] -= length * step[i]
			}
			p.back(rest, scale, slope)
			next := square(slope)
			if largest(rest) < 1e-14 || next < 1e-30 {
				break
			}
			for i := range way {
				way[i] = slope[i] + next/size*way[i]
			}
			size = next
		}
	}
	return v, false
}

// see is what each game sees of a vector, whose entries are scaled first if there is a scale: the sum of its side a
// less that of its side b.
func (p *part) see(v, scale, out []float64) {
	p.work += len(p.seats)
	from := 0
	for i, end := range p.ends {
		sum := 0.0
		for j, who := range p.seats[from:end[1]] {
			x := v[who]
			if scale != nil {
				x *= scale[who]
			}
			if from+j >= end[0] {
				x = -x
			}
			sum += x
		}
		out[i], from = sum, end[1]
	}
}

// back is the other way round: what each person is given of what the games see.
func (p *part) back(seen, scale, out []float64) {
	p.work += len(p.seats)
	clear(out)
	from := 0
	for i, end := range p.ends {
		for j, who := range p.seats[from:end[1]] {
			x := seen[i] * scale[who]
			if from+j >= end[0] {
				x = -x
			}
			out[who] += x
		}
		from = end[1]
	}
}

func square(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x * x
	}
	return sum
}

func largest(v []float64) float64 {
	most := 0.0
	for _, x := range v {
		most = max(most, math.Abs(x))
	}
	return most
}

// noise is a number between 0 and 1 that looks drawn, the same each time (G. L. Steele, D. Lea and C. H. Flood,
// "Fast Splittable Pseudorandom Number Generators", OOPSLA 2014, the finalizer of SplitMix64).
func noise(seed, i uint64) float64 {
	x := (seed<<32 + i + 1) * 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return float64((x^x>>31)>>11) / (1 << 53)
}
