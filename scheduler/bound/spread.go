package bound

// spread is a flow of least cost from rounds to rounds. From r to q the first so many units cost nothing each, as many
// further ones cost 1 each, and so on: Σ C(x,2) over as many cells, spread evenly.
type spread struct {
	left, right []int   // units that leave each round and that come to it
	cells       [][]int // from round to round; 0 where none may go
	flow        [][]int
}

func newSpread(rounds int) *spread {
	f := &spread{left: make([]int, rounds), right: make([]int, rounds), cells: make([][]int, rounds), flow: make([][]int, rounds)}
	for r := range rounds {
		f.cells[r], f.flow[r] = make([]int, rounds), make([]int, rounds)
	}
	return f
}

// least is the least cost of sending all units that can be sent, by shortest paths one after the other (Busacker &
// Gowen 1961).
func (f *spread) least() int {
	sum := 0
	for {
		cost, ok := f.send()
		if !ok {
			return sum
		}
		sum += cost
	}
}

// far is more than any path costs.
const far = 1 << 40

// send sends one unit more by the cheapest path, of which steps back take back what was sent.
func (f *spread) send() (cost int, ok bool) {
	rounds := len(f.left)
	to, from := make([]int, 2*rounds), make([]int, 2*rounds) // the rounds that units leave, then those that they come to
	for k := range to {
		to[k], from[k] = far, -1
		if k < rounds && f.left[k] > 0 {
			to[k] = 0
		}
	}
	for again := true; again; {
		again = false
		for r := range rounds {
			for q := range rounds {
				cells, x := f.cells[r][q], f.flow[r][q]
				if cells == 0 {
					continue
				}
				if d := to[r] + x/cells; to[r] < far && d < to[rounds+q] {
					to[rounds+q], from[rounds+q], again = d, r, true
				}
				if d := to[rounds+q] - (x-1)/cells; x > 0 && to[rounds+q] < far && d < to[r] {
					to[r], from[r], again = d, rounds+q, true
				}
			}
		}
	}
	end := -1
	for q := range rounds {
		if f.right[q] > 0 && to[rounds+q] < far && (end < 0 || to[rounds+q] < to[end]) {
			end = rounds + q
		}
	}
	if end < 0 {
		return 0, false
	}
	f.right[end-rounds]--
	k := end
	for from[k] >= 0 {
		before := from[k]
		if k >= rounds {
			f.flow[before][k-rounds]++
		} else {
			f.flow[k][before-rounds]--
		}
		k = before
	}
	f.left[k]--
	return to[end], true
}
