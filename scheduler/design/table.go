package design

import "slices"

// Table seats one game of doubles: seats 0 and 1 are partners against seats 2 and 3.
type Table [4]int

// splits are the three pairings of a block of four people. Played once in each, every two of the
// four have partnered once and opposed twice, which is a whist tournament for four.
var splits = [3][4]int{{0, 1, 2, 3}, {0, 2, 1, 3}, {0, 3, 1, 2}}

// split returns the block with its people paired in one of the three possible ways.
func (t Table) split(way int) Table {
	s := splits[way]
	return Table{t[s[0]], t[s[1]], t[s[2]], t[s[3]]}
}

// relabel returns the table with each person p replaced by name(p).
func (t Table) relabel(name func(int) int) Table {
	return Table{name(t[0]), name(t[1]), name(t[2]), name(t[3])}
}

// relabelRound returns a copy of the round with each person p replaced by name(p).
func relabelRound(round []Table, name func(int) int) []Table {
	out := make([]Table, len(round))
	for i, t := range round {
		out[i] = t.relabel(name)
	}
	return out
}

// splitAll returns a copy of the round with every block paired in the given way.
func splitAll(round []Table, way int) []Table {
	out := make([]Table, len(round))
	for i, t := range round {
		out[i] = t.split(way)
	}
	return out
}

// threeWays plays resolved blocks of four in their three pairings. All classes are played in one
// pairing before any is played in the next, so that nobody meets a third time before everybody has
// met twice. If the blocks contain each two people once, the result is a whist tournament.
func threeWays(classes [][]Table) [][]Table {
	rounds := make([][]Table, 0, 3*len(classes))
	for way := range splits {
		for _, class := range classes {
			rounds = append(rounds, splitAll(class, way))
		}
	}
	return rounds
}

// sameFour tells whether two tables seat the same people, in any order.
func (t Table) sameFour(u Table) bool {
	slices.Sort(t[:])
	slices.Sort(u[:])
	return t == u
}
