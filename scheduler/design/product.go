package design

// whistByProduct makes a whist tournament for v people as a product of two smaller ones.
func whistByProduct(v int) (rounds [][]Table, ok bool) {
	for k := 4; 4*k <= v; k += 4 {
		if rounds, ok := whistProduct(k, v); ok {
			return rounds, true
		}
	}
	return nil, false
}

// whistProduct makes a whist tournament for v = k·m people, k divisible by 4, from tournaments for k
// and for m and a resolvable transversal design of k teams of m people: every block of the
// transversal design plays the tournament for k, every team the one for m. Products of whist
// tournaments are classical (Baker 1975); this form was worked out here.
//
// With m divisible by 4 that takes m·(k-1) rounds for the blocks and m-1 for the teams. With m =
// 4n+1 one person of each team sits out while the teams play; these k people are a block of the
// transversal design's first round, and so they play one round of that block's tournament
// meanwhile. The first round then needs only k-2 rounds of its own, and the whole takes v-1.
func whistProduct(k, v int) (rounds [][]Table, ok bool) {
	m := v / k
	if v%k != 0 || m < 4 || m%4 > 1 {
		return nil, false
	}
	classes, ok := transversal(k, m)
	if !ok {
		return nil, false
	}
	across, ok := Whist(k)
	if !ok {
		return nil, false
	}
	within, ok := Whist(m)
	if !ok {
		return nil, false
	}
	first := 0 // first round of blocks to be played out in rounds of its own
	if m%4 == 1 {
		first = 1
	}
	for s, round := range across {
		for b := range classes {
			if b >= first || s > 0 {
				rounds = append(rounds, playBlocks(classes[b], round))
			}
		}
		if s > 0 {
			continue
		}
		for _, inTeam := range within {
			tables := playTeams(k, m, inTeam)
			if out := sitsOut(inTeam, m); out >= 0 {
				tables = append(tables, playBlocks(classes[0][out:out+1], round)...)
			}
			rounds = append(rounds, tables)
		}
	}
	return rounds, true
}

// playBlocks lets each block play the same round of a tournament for its size.
func playBlocks(blocks [][]int, round []Table) []Table {
	out := make([]Table, 0, len(blocks)*len(round))
	for _, block := range blocks {
		out = append(out, relabelRound(round, func(p int) int { return block[p] })...)
	}
	return out
}

// playTeams lets k teams of m people play the same round of a tournament for m.
func playTeams(k, m int, round []Table) []Table {
	out := make([]Table, 0, k*len(round))
	for c := range k {
		out = append(out, relabelRound(round, func(p int) int { return c*m + p })...)
	}
	return out
}

// sitsOut returns the person, of 0..people-1, who sits at none of the tables, or -1 if nobody does.
func sitsOut(round []Table, people int) int {
	seated := make([]bool, people)
	for _, t := range round {
		for _, p := range t {
			seated[p] = true
		}
	}
	for p, s := range seated {
		if !s {
			return p
		}
	}
	return -1
}
