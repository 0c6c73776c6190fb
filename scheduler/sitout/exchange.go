package sitout

import (
	"cmp"
	"slices"

	"club/quadrille/scheduler/night"
)

// exchange looks for chains of exchanges that make sit-outs fairer: somebody plays instead of sitting out a
// round, another sits out in it who in return plays in another round, and so on. Where no chain helps,
// the numbers are the fairest: chains are the augmenting paths of a flow of least cost (Busacker & Gowen
// 1961; see Ahuja, Magnanti & Orlin, Network Flows, 1993, chapter 9).
type exchange struct {
	n     *night.Night
	f     *Fair
	pools []pool
	in    [][]int // the pools of each person
	outs  []int   // sit-outs of each person beyond the history
}

// pool is those of a round to plan among whom sitting out is shared.
type pool struct {
	round  int // from 0, of those to plan
	people []night.Player
	out    []bool // by person
}

func newExchange(n *night.Night, f *Fair, out [][]night.Player) *exchange {
	x := &exchange{n: n, f: f, in: make([][]int, n.People), outs: make([]int, n.People)}
	for r, bench := range out {
		for _, people := range n.Pools(n.First + r) {
			p := pool{r, people, make([]bool, n.People)}
			for _, i := range people {
				x.in[i] = append(x.in[i], len(x.pools))
			}
			for _, i := range bench {
				if n.Known(i) && slices.Contains(people, i) {
					p.out[i] = true
					x.outs[i]++
				}
			}
			x.pools = append(x.pools, p)
		}
	}
	return x
}

// more is what one sit-out more of a person would add, less what the last one added.
func (x *exchange) more(i night.Player) int {
	return x.f.steps[i][x.outs[i]+1] - x.f.steps[i][x.outs[i]]
}

func (x *exchange) last(i night.Player) int {
	return x.f.steps[i][x.outs[i]] - x.f.steps[i][x.outs[i]-1]
}

// settle takes chains as long as one helps, first for those who sit out most beyond their share.
func (x *exchange) settle() {
	order := x.n.Everybody()
	for again := true; again; {
		again = false
		cheapest := 1 << 60
		for _, i := range order {
			if x.outs[i] < len(x.in[i]) {
				cheapest = min(cheapest, x.more(i))
			}
		}
		slices.SortStableFunc(order, func(i, j night.Player) int { return cmp.Compare(x.relief(j), x.relief(i)) })
		for _, i := range order {
			if x.relief(i) <= cheapest {
				break
			}
			if x.improve(i) {
				again = true
				break
			}
		}
	}
}

// relief is what is saved if a person sits out once less; nothing can be where the person never does.
func (x *exchange) relief(i night.Player) int {
	if x.outs[i] == 0 {
		return -1 << 60
	}
	return x.last(i)
}

// improve takes the best chain that begins with somebody who plays instead of sitting out, if one helps.
func (x *exchange) improve(first night.Player) bool {
	from := make([]link, x.n.People) // the exchange by which each person comes to sit out
	seen := make([]bool, x.n.People)
	done := make([]bool, len(x.pools))
	seen[first] = true
	end, least := night.Nobody, x.last(first)
	for line := []night.Player{first}; len(line) > 0; line = line[1:] {
		i := line[0]
		for _, k := range x.in[i] {
			if done[k] || !x.pools[k].out[i] {
				continue
			}
			done[k] = true
			for _, j := range x.pools[k].people {
				if seen[j] || x.pools[k].out[j] {
					continue
				}
				seen[j], from[j] = true, link{i, k}
				line = append(line, j)
				if x.outs[j] < len(x.in[j]) && x.more(j) < least {
					end, least = j, x.more(j)
				}
			}
		}
	}
	if end == night.Nobody {
		return false
	}
	x.outs[first]--
	x.outs[end]++
	for j := end; j != first; j = from[j].person {
		x.pools[from[j].pool].out[j] = true
		x.pools[from[j].pool].out[from[j].person] = false
	}
	return true
}

// link is an exchange: the person plays in the pool's round.
type link struct {
	person night.Player
	pool   int
}

// out lists who sits out in each round.
func (x *exchange) out() [][]night.Player {
	var out [][]night.Player
	for _, p := range x.pools {
		for len(out) <= p.round {
			out = append(out, nil)
		}
		for _, i := range p.people {
			if p.out[i] {
				out[p.round] = append(out[p.round], i)
			}
		}
	}
	for r := range out {
		slices.Sort(out[r])
	}
	return out
}

// steps is the sum over all people.
func (x *exchange) steps() int {
	sum := 0
	for i, k := range x.outs {
		sum += x.f.steps[i][k]
	}
	return sum
}

// spread is the difference between most and fewest sit-outs of those who are there throughout.
func (x *exchange) spread() int {
	low, high := 1<<60, 0
	for i, k := range x.outs {
		if x.f.throughout(x.n, night.Player(i)) {
			low, high = min(low, x.f.past[i]+k), max(high, x.f.past[i]+k)
		}
	}
	return max(0, high-low)
}
