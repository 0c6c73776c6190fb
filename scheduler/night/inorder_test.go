package night

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// TestPairsAreMadeInOrder of the list, around those who are kept from each other.
func TestPairsAreMadeInOrder(t *testing.T) {
	for _, c := range []struct {
		people int
		kept   []Pair
		want   []Team
	}{
		{0, nil, []Team{}},
		{1, nil, []Team{}},
		{5, nil, []Team{{0, 1}, {2, 3}}},
		{4, []Pair{{A: 0, B: 1}}, []Team{{0, 2}, {1, 3}}},
		{4, []Pair{{A: 0, B: 1}, {A: 0, B: 2}}, []Team{{0, 3}, {1, 2}}},
		{4, []Pair{{A: 1, B: 3}, {A: 2, B: 3}}, []Team{{0, 3}, {1, 2}}},
		{5, []Pair{{A: 0, B: 1}, {A: 0, B: 2}, {A: 0, B: 3}, {A: 0, B: 4}}, []Team{{1, 2}, {3, 4}}},
		{4, []Pair{{A: 0, B: 1}, {A: 0, B: 2}, {A: 0, B: 3}}, []Team{{0, 1}, {2, 3}}},
	} {
		var people []Player
		for i := range c.people {
			people = append(people, Player(i))
		}
		got := inOrder(people, func(a, b Player) bool { return HasPair(c.kept, Pair{A: a, B: b}) })
		if !reflect.DeepEqual(got, c.want) {
			t.Errorf("%d people, %v: %v, want %v", c.people, c.kept, got, c.want)
		}
	}
}

// TestPairsAreFoundWhereThereAreAny: whatever is forbidden, as long as some choice is left, nobody has a forbidden
// partner, and nobody is in two pairs.
func TestPairsAreFoundWhereThereAreAny(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		count := rapid.IntRange(0, 9).Draw(t, "people")
		var people []Player
		for i := range count {
			people = append(people, Player(i))
		}
		no := map[Team]bool{}
		for a := range people {
			for b := range a {
				no[Team{Player(b), Player(a)}] = rapid.IntRange(0, 2).Draw(t, "kept") == 0
			}
		}
		kept := func(a, b Player) bool { return no[Team{min(a, b), max(a, b)}] }
		got, seen, bad := inOrder(people, kept), map[Player]bool{}, 0
		for _, p := range got {
			if seen[p[0]] || seen[p[1]] || p[0] == p[1] {
				t.Fatalf("%v", got)
			}
			seen[p[0]], seen[p[1]] = true, true
			if kept(p[0], p[1]) {
				bad++
			}
		}
		if len(got) != count/2 || bad > 0 && most(people, kept) == count/2 {
			t.Fatalf("%d people make %v, of which %d are kept from each other", count, got, bad)
		}
	})
}

// most is how many pairs can be made, by trying all.
func most(people []Player, kept func(a, b Player) bool) int {
	if len(people) < 2 {
		return 0
	}
	best := most(people[1:], kept)
	for i := 1; i < len(people); i++ {
		if !kept(people[0], people[i]) {
			rest := append(append([]Player(nil), people[1:i]...), people[i+1:]...)
			best = max(best, 1+most(rest, kept))
		}
	}
	return best
}
