package night

// Known tells whether the number stands for a person of the problem.
func (n *Night) Known(i Player) bool { return i >= 0 && int(i) < n.People }

// OnlyKnown returns those of the people who are of the problem.
func (n *Night) OnlyKnown(people []Player) []Player {
	var known []Player
	for _, i := range people {
		if n.Known(i) {
			known = append(known, i)
		}
	}
	return known
}

// Distinct returns the people of the problem among those named, each once, in ascending order.
func (n *Night) Distinct(named []Player) []Player {
	is := make([]bool, n.People)
	for _, i := range n.OnlyKnown(named) {
		is[i] = true
	}
	var out []Player
	for i, yes := range is {
		if yes {
			out = append(out, Player(i))
		}
	}
	return out
}
