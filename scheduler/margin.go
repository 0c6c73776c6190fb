package scheduler

// margin is what one meeting more or less of a pair costs, ready for the search to add up.
type margin struct {
	partner, oppose   int32 // one more game as partners, as opponents
	unpart, unopposed int32 // one less
}

// pairCost is what a pair of people costs who partnered p times and opposed o times.
func pairCost(p, o int) int {
	return score{partners: pairsOf(p), opponent: pairsOf(o), meetings: pairsOf(p + o)}.weight()
}

// usual holds the margins of pairs of whom nothing is asked, by how often they partnered and opposed.
const usualP, usualO = 8, 16

var usual = func() (table [usualP][usualO]margin) {
	for p := range usualP {
		for o := range usualO {
			table[p][o] = marginOf(p, o, pairCost)
		}
	}
	return table
}()

// marginOf works out the margins from the cost at the four neighbours.
func marginOf(p, o int, cost func(p, o int) int) margin {
	now := cost(p, o)
	m := margin{partner: int32(cost(p+1, o) - now), oppose: int32(cost(p, o+1) - now)}
	if p > 0 {
		m.unpart = int32(cost(p-1, o) - now)
	}
	if o > 0 {
		m.unopposed = int32(cost(p, o-1) - now)
	}
	return m
}

// marginAt is the margins of an entry of the pair table.
func (b *board) marginAt(at int, t tally) margin {
	asked := b.n.wishes != nil && b.n.wishes.asked[at]
	if !asked && t.p < usualP && t.o < usualO {
		return usual[t.p][t.o]
	}
	return marginOf(int(t.p), int(t.o), func(p, o int) int {
		if !asked {
			return pairCost(p, o)
		}
		return pairCost(p, o) + b.n.wishes.cost(at, p, o).weight()
	})
}
