package search

import (
	"slices"

	"club/quadrille/scheduler/design"
	"club/quadrille/scheduler/night"
)

// strangers chooses so many of the v people of a design who meet each other as rarely as can be found:
// around each person in turn those are added who meet the chosen ones least.
func strangers(rounds [][]design.Table, v, count int) []int {
	if count == 0 {
		return nil
	}
	met := make([]int, v*v)
	for _, tables := range rounds {
		for _, t := range tables {
			for _, i := range t {
				for _, j := range t {
					met[i*v+j]++
				}
			}
		}
	}
	var best []int
	least := -1
	for first := range v {
		set, cost := []int{first}, 0
		load := slices.Clone(met[first*v : (first+1)*v])
		for len(set) < count {
			next := -1
			for i := range v {
				if !slices.Contains(set, i) && (next < 0 || load[i] < load[next]) {
					next = i
				}
			}
			cost += load[next]
			set = append(set, next)
			for i := range load {
				load[i] += met[next*v+i]
			}
		}
		if least < 0 || cost < least {
			best, least = set, cost
		}
	}
	return best
}

// restOrder orders rounds so that few people sit at a broken table in two rounds running: from each
// round in turn the next is always the one that shares fewest such people with the one before.
func restOrder(rounds [][]design.Table, names []night.Player) [][]design.Table {
	shared := brokenShared(rounds, names)
	var best []int
	least := -1
	for first := range rounds {
		order, cost := []int{first}, 0
		for len(order) < len(rounds) {
			row, next := shared[order[len(order)-1]], -1
			for r := range rounds {
				if !slices.Contains(order, r) && (next < 0 || row[r] < row[next]) {
					next = r
				}
			}
			cost += row[next]
			order = append(order, next)
		}
		if least < 0 || cost < least {
			best, least = order, cost
		}
	}
	ordered := make([][]design.Table, 0, len(rounds))
	for _, r := range best {
		ordered = append(ordered, rounds[r])
	}
	return ordered
}

// brokenShared counts for each two rounds the people who sit at tables with a missing person in both.
func brokenShared(rounds [][]design.Table, names []night.Player) [][]int {
	broken := make([][]bool, len(rounds))
	for r, tables := range rounds {
		broken[r] = make([]bool, len(names))
		for _, t := range tables {
			if slices.ContainsFunc(t[:], func(i int) bool { return names[i] == night.Nobody }) {
				for _, i := range t {
					broken[r][i] = names[i] != night.Nobody
				}
			}
		}
	}
	shared := make([][]int, len(rounds))
	for r := range rounds {
		shared[r] = make([]int, len(rounds))
		for q := range rounds {
			for i := range names {
				shared[r][q] += night.One(broken[r][i] && broken[q][i])
			}
		}
	}
	return shared
}
