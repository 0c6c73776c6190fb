package rotation

import (
	"slices"

	"club/quadrille/scheduler"
)

// A rotation made elsewhere says neither who is whose partner in set pairs nor who belongs to which
// group in mixed games; its games do.

// foundPairs takes for a set pair whoever first stand in one team, unless the roster pairs one of
// them with somebody.
func foundPairs(p scheduler.Problem, rounds []scheduler.Round) []scheduler.Pair {
	paired := make([]bool, len(p.People))
	for _, t := range p.Together {
		paired[t.A], paired[t.B] = true, true
	}
	var found []scheduler.Pair
	for _, r := range rounds {
		for _, g := range r.Games {
			for _, t := range []scheduler.Team{g.A, g.B} {
				if t[1] == scheduler.Nobody || t[0] == t[1] || paired[t[0]] || paired[t[1]] {
					continue
				}
				paired[t[0]], paired[t[1]] = true, true
				found = append(found, scheduler.Pair{A: min(t[0], t[1]), B: max(t[0], t[1])})
			}
		}
	}
	return found
}

// findGroups gives everybody a group such that partners differ, if the roster gives nobody one.
// People who are connected through partners are coloured in turn; what is not connected is joined
// so that the groups stay about equal. Partners in a ring of odd length end up in one group, which
// is for the audit to find.
func findGroups(people []scheduler.Person, rounds []scheduler.Round) {
	if slices.ContainsFunc(people, func(p scheduler.Person) bool { return p.Group != "" }) {
		return
	}
	partners := make([][]scheduler.Player, len(people))
	for _, r := range rounds {
		for _, g := range r.Games {
			for _, t := range []scheduler.Team{g.A, g.B} {
				if t[1] != scheduler.Nobody {
					partners[t[0]] = append(partners[t[0]], t[1])
					partners[t[1]] = append(partners[t[1]], t[0])
				}
			}
		}
	}
	balance := 0
	for i := range people {
		if people[i].Group != "" {
			continue
		}
		component := colour(people, partners, scheduler.Player(i))
		lean := 0
		for _, p := range component {
			lean += sign(people[p].Group)
		}
		if lean*balance > 0 {
			for _, p := range component {
				people[p].Group = otherGroup(people[p].Group)
			}
			lean = -lean
		}
		balance += lean
	}
}

// colour gives everybody who is connected with the first a group, and lists them.
func colour(people []scheduler.Person, partners [][]scheduler.Player, first scheduler.Player) []scheduler.Player {
	people[first].Group = "1"
	queue := []scheduler.Player{first}
	for at := 0; at < len(queue); at++ {
		p := queue[at]
		for _, q := range partners[p] {
			if people[q].Group == "" {
				people[q].Group = otherGroup(people[p].Group)
				queue = append(queue, q)
			}
		}
	}
	return queue
}

func otherGroup(group string) string {
	if group == "1" {
		return "2"
	}
	return "1"
}

func sign(group string) int {
	if group == "1" {
		return 1
	}
	return -1
}
