package design

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// clone copies a schedule down to its tables.
func clone(rounds [][]Table) [][]Table {
	out := make([][]Table, len(rounds))
	for r := range rounds {
		out[r] = append([]Table(nil), rounds[r]...)
	}
	return out
}

// TestChecksFindAnySwap: exchanging two people of different tables, or two opponents' partners, in
// one round of a perfect design always breaks it.
func TestChecksFindAnySwap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.SampledFrom([]int{8, 9, 12, 13, 16, 21, 24}).Draw(t, "people")
		rounds, _ := Whist(v)
		rounds = clone(rounds)
		round := rounds[rapid.IntRange(0, len(rounds)-1).Draw(t, "round")]
		a := rapid.IntRange(0, 4*len(round)-1).Draw(t, "first")
		b := rapid.IntRange(0, 4*len(round)-1).Draw(t, "second")
		if a/2 == b/2 {
			return // partners changing seats change nothing
		}
		round[a/4][a%4], round[b/4][b%4] = round[b/4][b%4], round[a/4][a%4]
		if checkWhist(v, rounds) == nil {
			t.Fatalf("seats %d and %d of a round changed places unnoticed", a, b)
		}
	})
}

func TestChecksNameTheFault(t *testing.T) {
	four := [][]Table{{{0, 1, 2, 3}}, {{0, 2, 1, 3}}, {{0, 3, 1, 2}}}
	couples, _ := SpouseAvoiding(4)
	mixed, _ := MixedRotation(2, 3)
	cases := []struct {
		name string
		err  error
		want string
	}{
		{"wrong number", checkWhist(6, nil), "no whist tournament for 6 people"},
		{"too few rounds", checkWhist(4, four[:2]), "2 rounds"},
		{"nobody there", checkWhist(4, [][]Table{four[0], four[1], nil}), "round 3 has 0 tables"},
		{"stranger", checkWhist(4, [][]Table{four[0], four[1], {{0, 3, 1, 4}}}), "round 3 seats person 4, but people are 0 to 3"},
		{"negative", checkQuads(4, [][]Table{{{0, 1, 2, -1}}}), "person -1"},
		{"twice in a round", checkWhist(4, [][]Table{four[0], four[1], {{0, 3, 1, 1}}}), "person 1 twice"},
		{"partners again", checkWhist(4, [][]Table{four[0], four[1], four[1]}), "partner"},
		{"meet again", checkQuads(4, four[:2]), "meet 2 times"},
		{"unequal turns", checkQuads(9, [][]Table{{{0, 1, 2, 3}, {4, 5, 6, 7}}, {{0, 4, 1, 5}, {2, 6, 3, 7}}}), "2"},
		{"no fours", checkQuads(3, nil), "3 people"},
		{"women first", checkSpouseAvoiding(4, [][]Table{{{4, 0, 5, 1}}}), "does not seat man"},
		{"a game less", checkSpouseAvoiding(4, couples[1:]), "oppose 0 times"},
		{"a game more", checkSpouseAvoiding(4, append(couples[:3:3], []Table{{0, 4, 1, 5}})), "oppose 2 times"},
		{"mixed, a round less", checkMixed(2, 3, mixed[1:]), "2 rounds"},
		{"mixed, same again", checkMixed(2, 3, [][]Table{mixed[0], mixed[0], mixed[0]}), "of the same group"},
		{"mixed, partners again", checkMixed(2, 2, [][]Table{{{0, 2, 1, 3}}, {{0, 2, 1, 3}}}), "partner 2 times"},
	}
	for _, c := range cases {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("%s: error %v does not say %q", c.name, c.err, c.want)
		}
	}
}
