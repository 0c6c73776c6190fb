package night

// Pools divides the people of round r into those among whom sitting out is shared: everybody, or
// on a mixed night each group, or with set pairs those whose partner is there and those for whom
// there is no game.
func (n *Night) Pools(r int) [][]Player {
	if n.Problem.Format != Mixed && n.Problem.Format != Pairs {
		return [][]Player{n.Here[r]}
	}
	pools := make([][]Player, 2)
	for _, i := range n.Here[r] {
		k := 0
		if n.Problem.Format == Mixed {
			k = n.Side[i]
		} else if !n.HasMate(i, r) {
			k = 1
		}
		pools[k] = append(pools[k], i)
	}
	return pools
}

// SeatsOf is how many of a round's seats belong to the pool with that number.
func (n *Night) SeatsOf(pool, seats int) int {
	switch {
	case n.Problem.Format == Mixed:
		return seats / 2
	case pool == 1:
		return 0
	}
	return seats
}
