package design

// pack shares games out over as few rounds as possible such that nobody plays twice in a round. It
// tries all ways, which is quick for the few games that the catalogue packs.
func pack(games []Table) [][]Table {
	for n := 1; ; n++ {
		rounds := make([][]Table, n)
		if place(games, rounds) {
			return rounds
		}
	}
}

// place puts the games into the rounds, the first game into the first round that allows all others
// to follow, and tells whether that could be done.
func place(games []Table, rounds [][]Table) bool {
	if len(games) == 0 {
		return true
	}
	for r := range rounds {
		if !free(games[0], rounds[r]) {
			continue
		}
		rounds[r] = append(rounds[r], games[0])
		if place(games[1:], rounds) {
			return true
		}
		rounds[r] = rounds[r][:len(rounds[r])-1]
		if len(rounds[r]) == 0 {
			return false // further empty rounds are no different
		}
	}
	return false
}

// free tells whether nobody at the table plays in the round.
func free(t Table, round []Table) bool {
	for _, u := range round {
		for _, p := range t {
			for _, q := range u {
				if p == q {
					return false
				}
			}
		}
	}
	return true
}
