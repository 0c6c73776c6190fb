package design

import (
	"slices"

	"club/quadrille/scheduler/design/ring"
)

// Whist returns a whist tournament for v people: each two partner exactly once and oppose exactly
// twice. For v divisible by 4 all play in each of v-1 rounds; for v = 4n+1 one person sits out each
// of v rounds, each person once.
//
// Whist tournaments exist exactly for v ≡ 0 or 1 (mod 4) (Baker, Wilson, Hanani; Baker, Congressus
// Numerantium 14, 1975, 89-100). This catalogue makes all of them to 101, and to 201 all but
// 108, 129, 132, 140, 152, 168, 177 and 189; ok is false where it has none. For a night of fewer
// rounds use [Prefix] or [Best].
func Whist(v int) (rounds [][]Table, ok bool) {
	if v < 4 || v%4 > 1 {
		return nil, false
	}
	// The first ways have rounds that share few meetings, and so the better short nights.
	for _, way := range []func(int) ([][]Table, bool){
		whistByBlocks, whistByProduct, whistByInflation, whistByRoot, whistByStarter,
	} {
		if rounds, ok := way(v); ok {
			return rounds, true
		}
	}
	return nil, false
}

// whistByBlocks plays the blocks of a resolvable design, in which each two people share one block of
// four, in their three pairings.
func whistByBlocks(v int) (rounds [][]Table, ok bool) {
	classes, ok := blockClasses(v)
	return threeWays(classes), ok
}

// whistByRoot makes a whist tournament for v = 4n+1 people, the elements of a ring in which i·i = -1
// and 2 is a unit: the tables (x, -x) v (i·x, -i·x), one for each orbit {x, i·x, -x, -i·x}, and all
// their translates. Partners differ by ±2x and ±2ix, once each element; opponents by (1-i) times
// x, ix, -x, -ix, twice each. Bose & Cameron, J. Res. Nat. Bur. Standards 69B (1965) 323-332, for
// prime powers; Baker (1975).
func whistByRoot(v int) (rounds [][]Table, ok bool) {
	for _, q := range ring.PrimePowers(v) {
		if q%4 != 1 {
			return nil, false
		}
	}
	r := ring.Fields(v)
	i, ok := r.RootOfMinusOne()
	if !ok {
		return nil, false
	}
	seen := make([]bool, v)
	var base []Table
	for x := 1; x < v; x++ {
		if seen[x] {
			continue
		}
		ix := r.Mul(i, x)
		t := Table{x, r.Neg(x), ix, r.Neg(ix)}
		for _, p := range t {
			seen[p] = true
		}
		base = append(base, t)
	}
	for t := range v {
		rounds = append(rounds, relabelRound(base, func(p int) int { return r.Add(p, t) }))
	}
	return rounds, true
}

// whistByStarter develops a stored starter.
func whistByStarter(v int) (rounds [][]Table, ok bool) {
	s, ok := find(whistRecipes, v)
	if !ok {
		return nil, false
	}
	switch s.Kind {
	case WhistFrame:
		return s.completeFrame()
	case WhistHole:
		return s.fillHole()
	}
	return s.Rounds(), true
}

// completeFrame lets the groups of a frame, the translates of the hole, play by themselves.
func (s Starter) completeFrame() (rounds [][]Table, ok bool) {
	var first []int // one person of each group
	group := make([]int, s.People-1)
	for p := range group {
		i := slices.IndexFunc(first, func(q int) bool { return s.InHole(p, q) })
		if i < 0 {
			i = len(first)
			first = append(first, p)
		}
		group[p] = i
	}
	return completeFrame(s.Rounds(), len(group)/len(first), func(p int) int { return group[p] }, s.People)
}

// fillHole adds the rounds in which the fixed people and each translate of the hole, all of one
// size, play tournaments of their own at the same time.
func (s Starter) fillHole() (rounds [][]Table, ok bool) {
	within, ok := Whist(s.Group.Fixed)
	if !ok {
		return nil, false
	}
	var groups [][]int
	for p := range s.People {
		i := slices.IndexFunc(groups, func(g []int) bool { return s.InHole(p, g[0]) })
		if i < 0 {
			i = len(groups)
			groups = append(groups, nil)
		}
		groups[i] = append(groups[i], p)
	}
	rounds = s.Rounds()
	for _, round := range within {
		rounds = append(rounds, playBlocks(groups, round))
	}
	return rounds, true
}
