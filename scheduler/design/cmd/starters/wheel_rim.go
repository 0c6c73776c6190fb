package main

// rim is a night's people on the circles of a wheel, and what turning makes of them: all that does not
// change while base rounds are searched.
//
// Two people and all whom they become by turning are an orbit of pairs. The pairs of an orbit meet equally
// often, and so counting the meetings of orbits in base rounds counts everything.
type rim struct {
	wheelNight
	wheelShape
	image   [][]int   // of each turn and person: whom the person becomes
	circle  [][]int   // of each person: the people of the same circle
	orbitOf [][]int32 // of each two different people: the number of their orbit
	orbits  []orbit
	width   int // more than an orbit can meet in base rounds: each of its pairs at most once in each of them
}

// orbit is a pair of people and the pairs that they become by turning.
type orbit struct {
	times int    // meetings of each pair for one of the orbit in a base round
	tolls []toll // at partners·width + meetings of the orbit in base rounds
}

// toll is what an orbit's meetings cost in all rounds of the wheel.
type toll struct {
	weight   int32 // what annealing makes small
	meetings int32 // Σ C(m,2) over the pairs, who meet m times
}

// What each two times weigh that a pair partners, meets and opposes. Repeated partners are worst, and two
// who oppose twice meet twice as well.
const (
	partnerWeight  = 64
	meetingWeight  = 16
	opponentWeight = 2
)

// newRim works out the turns and the orbits.
func newRim(n wheelNight, s wheelShape) *rim {
	r := &rim{wheelNight: n, wheelShape: s, width: s.order*s.bases + 1}
	r.turn()
	r.pair()
	return r
}

// turn works out whom everybody becomes.
func (r *rim) turn() {
	r.image = make([][]int, r.order)
	for t := range r.image {
		r.image[t] = make([]int, r.people)
	}
	first := 0
	for _, size := range r.circles {
		circle := make([]int, size)
		for x := range circle {
			circle[x] = first + x
			r.circle = append(r.circle, circle)
			for t := range r.image {
				r.image[t][first+x] = first + (x+t)%size
			}
		}
		first += size
	}
}

// pair numbers the orbits of pairs and gives each its tolls.
func (r *rim) pair() {
	const unknown = -1
	for range r.people {
		row := make([]int32, r.people)
		for q := range row {
			row[q] = unknown
		}
		r.orbitOf = append(r.orbitOf, row)
	}
	tolls := make(map[int][]toll) // by the number of pairs
	for p := range r.people {
		for q := range p {
			if r.orbitOf[p][q] != unknown {
				continue
			}
			number, size := int32(len(r.orbits)), 0
			for _, become := range r.image {
				a, b := become[p], become[q]
				if r.orbitOf[a][b] == unknown {
					r.orbitOf[a][b], r.orbitOf[b][a] = number, number
					size++
				}
			}
			times := r.order / size
			if tolls[size] == nil {
				tolls[size] = r.tollsOf(size, times)
			}
			r.orbits = append(r.orbits, orbit{times, tolls[size]})
		}
	}
}

// tollsOf is what an orbit of so many pairs costs, each of whom meets so many times for one meeting in a
// base round.
func (r *rim) tollsOf(pairs, times int) []toll {
	tolls := make([]toll, r.width*r.width)
	for partners := range r.width {
		for meetings := partners; meetings < r.width; meetings++ {
			met := twos(meetings * times)
			tolls[partners*r.width+meetings] = toll{
				weight: int32(pairs * (partnerWeight*twos(partners*times) + meetingWeight*met +
					opponentWeight*twos((meetings-partners)*times))),
				meetings: int32(pairs * met),
			}
		}
	}
	return tolls
}

// twos is C(n,2).
func twos(n int) int { return n * (n - 1) / 2 }
