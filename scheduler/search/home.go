package search

import (
	"club/quadrille/scheduler/night"
)

// balanceHome names the teams of each game so that everybody is about equally often in team A, which
// has the first call of ends and serve: the team whose people were in A less often comes first.
func balanceHome(n *night.Night, rounds []night.Round) {
	lead := make([]int, n.People) // games in A less games in B
	count := func(g night.Game) {
		for _, i := range n.OnlyKnown(g.A[:]) {
			lead[i]++
		}
		for _, i := range n.OnlyKnown(g.B[:]) {
			lead[i]--
		}
	}
	for _, g := range n.Problem.Earlier() {
		count(g)
	}
	of := func(t night.Team) int {
		sum := 0
		for _, i := range n.OnlyKnown(t[:]) {
			sum += lead[i]
		}
		return sum
	}
	for r := range rounds {
		for k := range rounds[r].Games {
			g := &rounds[r].Games[k]
			if of(g.A) > of(g.B) {
				g.A, g.B = g.B, g.A
			}
			count(*g)
		}
	}
}
