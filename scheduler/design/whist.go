package design

// Whist returns a whist tournament for v people: each two partner exactly once and oppose exactly
// twice. For v divisible by 4 all play in each of v-1 rounds; for v = 4n+1 one person sits out each
// of v rounds, each person once.
//
// Whist tournaments exist exactly for v ≡ 0 or 1 (mod 4) (Baker, Wilson, Hanani; Baker, Congressus
// Numerantium 14, 1975, 89-100). This catalogue makes all of them to 101 and many above; ok is
// false where it has none. The rounds come in an order whose beginnings repeat few meetings; use
// [Prefix] for a given number of rounds.
func Whist(v int) (rounds [][]Table, ok bool) {
	if v < 4 || v%4 > 1 {
		return nil, false
	}
	if classes, ok := blockClasses(v); ok {
		return threeWays(classes), true
	}
	for _, k := range []int{4, 8, 12, 16} {
		if rounds, ok := whistProduct(k, v); ok {
			return rounds, true
		}
	}
	if rounds, ok := whistByRoot(v); ok {
		return rounds, true
	}
	return whistByStarter(v)
}

// whistByRoot makes a whist tournament for v = 4n+1 people, the elements of a ring in which i·i = -1
// and 2 is a unit: the tables (x, -x) v (i·x, -i·x), one for each orbit {x, i·x, -x, -i·x}, and all
// their translates. Partners differ by ±2x and ±2ix, once each element; opponents by (1-i) times
// x, ix, -x, -ix, twice each. Bose & Cameron, J. Res. Nat. Bur. Standards 69B (1965) 323-332, for
// prime powers; Baker (1975).
func whistByRoot(v int) (rounds [][]Table, ok bool) {
	for _, q := range primePowers(v) {
		if q%4 != 1 {
			return nil, false
		}
	}
	r := fields(v)
	i, ok := r.rootOfMinusOne()
	if !ok {
		return nil, false
	}
	seen := make([]bool, v)
	var base []Table
	for x := 1; x < v; x++ {
		if seen[x] {
			continue
		}
		ix := r.times(i, x)
		t := Table{x, r.negative[x], ix, r.negative[ix]}
		for _, p := range t {
			seen[p] = true
		}
		base = append(base, t)
	}
	return develop(r, base), true
}

// develop returns the translates of a base round by each element of the ring, in the ring's order.
// Numbers from r.n up are fixed people and stay where they are.
func develop(r *ring, base []Table) [][]Table {
	rounds := make([][]Table, r.n)
	for t := range rounds {
		rounds[t] = translate(r, base, t)
	}
	return rounds
}

// translate adds t to each person of the round; fixed people, numbered from r.n up, stay.
func translate(r *ring, round []Table, t int) []Table {
	return relabelRound(round, func(p int) int {
		if p >= r.n {
			return p
		}
		return r.add(p, t)
	})
}
