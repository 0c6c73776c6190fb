package scheduler

import "club/quadrille/scheduler/night"

// ClosedGroups is into how many groups people fall who never play with or against anybody outside, in the games
// of the problem's history and these rounds together. Whoever has no game at all is counted in none.
func ClosedGroups(p Problem, rounds []Round) int {
	root := make([]int, len(p.People))
	for i := range root {
		root[i] = i
	}
	find := func(i int) int {
		for root[i] != i {
			root[i] = root[root[i]]
			i = root[i]
		}
		return i
	}
	plays := make([]bool, len(p.People))
	games := p.Earlier()
	for _, r := range rounds {
		games = append(games, r.Games...)
	}
	for _, g := range games {
		first := -1
		for _, i := range g.Players() {
			if i < 0 || int(i) >= len(p.People) {
				continue
			}
			if plays[i] = true; first < 0 {
				first = int(i)
			}
			root[find(int(i))] = find(first)
		}
	}
	groups := 0
	for i := range root {
		groups += night.One(plays[i] && find(i) == i)
	}
	return groups
}
