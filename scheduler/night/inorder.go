package night

// inOrder makes pairs of people in their order: each with the next who may be the partner, so that as many as can be
// have one. Where nobody is kept from anybody these are the first two, the next two and so on. If the search for such
// pairs takes too long, or there are none, some of the pairs are kept from each other.
func inOrder(people []Player, kept func(a, b Player) bool) []Team {
	const most = 20_000 // steps; lists in which few are kept from few take about one a pair
	steps, pairs := 0, make([]Team, 0, len(people)/2)
	used := make([]bool, len(people))
	var from func(first, alone int) bool
	from = func(first, alone int) bool {
		for first < len(people) && used[first] {
			first++
		}
		if first == len(people) {
			return true
		}
		if steps++; steps > most {
			return false
		}
		used[first] = true
		for i := first + 1; i < len(people); i++ {
			if used[i] || kept(people[first], people[i]) {
				continue
			}
			used[i] = true
			pairs = append(pairs, Team{people[first], people[i]})
			if from(first+1, alone) {
				return true
			}
			pairs, used[i] = pairs[:len(pairs)-1], false
		}
		if alone > 0 && from(first+1, alone-1) {
			return true
		}
		used[first] = false
		return false
	}
	if from(0, len(people)%2) {
		return pairs
	}
	pairs = pairs[:0]
	for i := 0; i+1 < len(people); i += 2 {
		pairs = append(pairs, Team{people[i], people[i+1]})
	}
	return pairs
}
