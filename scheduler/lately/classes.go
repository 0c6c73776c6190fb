package lately

import (
	"fmt"
	"slices"

	"club/quadrille/scheduler/night"
)

// classes numbers people so that those of one number are alike in all that a plan depends on. Whoever has a wish, or is
// in one, is alike nobody.
func classes(n *night.Night) []int {
	p := n.Problem
	alone := make([]bool, n.People)
	for _, list := range [][]night.Pair{p.Together, p.NeverPartner, p.NeverMeet} {
		for _, t := range list {
			for _, i := range [2]night.Player{t.A, t.B} {
				if n.Known(i) {
					alone[i] = true
				}
			}
		}
	}
	known := map[string]int{}
	out := make([]int, n.People)
	for i, person := range p.People {
		courts := slices.Clone(person.Courts)
		slices.Sort(courts)
		of := fmt.Sprint(person.Group, "\x00", person.Level, "\x00", person.Arrive, person.Leave, courts)
		if alone[i] || n.Mate[i] != night.Nobody {
			of = fmt.Sprint("alone ", i)
		}
		if _, ok := known[of]; !ok {
			known[of] = len(known)
		}
		out[i] = known[of]
	}
	return out
}
