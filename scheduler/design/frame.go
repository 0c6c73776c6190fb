package design

import "slices"

// whistByInflation makes a whist tournament for v = m·u + 1 people from tournaments for u ≡ 1 (mod
// 4) and for m + 1 people. Every person of the small tournament becomes a group of m people and
// every table becomes the m rounds of a resolvable transversal design of four teams, which keeps
// the seats: two people of different groups partner once and oppose twice, and each round is missed
// by the group of the person who sat out. That is a frame, which completeFrame completes. Frames are
// a standard means (Anderson, Combinatorial Designs and Tournaments, Oxford 1997); this use of
// them was worked out here.
func whistByInflation(v int) (rounds [][]Table, ok bool) {
	for u := 5; 3*u < v; u += 4 {
		m := (v - 1) / u
		if m*u != v-1 || m%4 == 1 || m%4 == 2 {
			continue
		}
		small, ok := Whist(u)
		if !ok {
			continue
		}
		if frame, ok := inflate(small, m); ok {
			return completeFrame(frame, m, func(p int) int { return p / m }, v)
		}
	}
	return nil, false
}

// inflate replaces each person p of the rounds by the m people p·m to p·m + m-1, and each round by m.
func inflate(small [][]Table, m int) (frame [][]Table, ok bool) {
	classes, ok := transversal(4, m)
	if !ok {
		return nil, false
	}
	for _, round := range small {
		for _, class := range classes {
			var wide []Table
			for _, t := range round {
				for _, block := range class {
					var seats Table
					for i, p := range t {
						seats[i] = p*m + block[i]%m
					}
					wide = append(wide, seats)
				}
			}
			frame = append(frame, wide)
		}
	}
	return frame, true
}

// completeFrame makes a whist tournament for v people of a frame: rounds of people 0..v-2 in which
// every two of different groups partner once and oppose twice, and each of which exactly one group
// of h people misses, each group h times. The missing group and person v-1 play their own
// tournament meanwhile, one round at a time. With h divisible by 4 this tournament has one round
// more, in which person v-1 sits out: all groups play it together at the end.
func completeFrame(frame [][]Table, h int, group func(p int) int, v int) (rounds [][]Table, ok bool) {
	within, ok := Whist(h + 1)
	if !ok {
		return nil, false
	}
	within = slices.Clone(within)
	slices.SortStableFunc(within, func(a, b []Table) int { return sitsOut(a, h+1) - sitsOut(b, h+1) })
	members := make([][]int, (v-1)/h)
	for p := range v - 1 {
		members[group(p)] = append(members[group(p)], p)
	}
	played := make([]int, len(members))
	seat := func(g, round int) []Table {
		return relabelRound(within[round], func(p int) int {
			if p == h {
				return v - 1
			}
			return members[g][p]
		})
	}
	for _, round := range frame {
		g := group(sitsOut(round, v-1))
		rounds = append(rounds, append(slices.Clone(round), seat(g, played[g])...))
		played[g]++
	}
	if len(within) > h {
		var last []Table
		for g := range members {
			last = append(last, seat(g, h)...)
		}
		rounds = append(rounds, last)
	}
	return rounds, true
}
