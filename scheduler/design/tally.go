package design

// counts tells how often each person plays and each two people, at p·people + q and q·people + p,
// partner and oppose.
type counts struct {
	games, partners, opponents []int
}

// tally counts the games, partners and opponents of a valid schedule.
func tally(people int, rounds [][]Table) counts {
	c := counts{make([]int, people), make([]int, people*people), make([]int, people*people)}
	for _, round := range rounds {
		for _, t := range round {
			for i, p := range t {
				c.games[p]++
				for j, q := range t {
					switch {
					case i == j:
					case i/2 == j/2:
						c.partners[p*people+q]++
					default:
						c.opponents[p*people+q]++
					}
				}
			}
		}
	}
	return c
}
