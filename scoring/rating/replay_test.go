package rating_test

import (
	"math"
	"strings"
	"testing"

	"club/quadrille/scoring/rating"
)

type game = rating.Game[string]

func doubles(a1, a2, b1, b2 string, share float64) game {
	return game{A: []string{a1, a2}, B: []string{b1, b2}, Share: share}
}

func TestGamesThatCannotBeRated(t *testing.T) {
	for name, c := range map[string]struct {
		games  []game
		reason string
	}{
		"nobody on a side":  {[]game{{A: []string{"Ann"}}}, "game 1: a team has nobody"},
		"more than a win":   {[]game{doubles("Ann", "Art", "Bea", "Bob", 1), doubles("Ann", "Art", "Bea", "Bob", 1.1)}, "game 2"},
		"no share":          {[]game{doubles("Ann", "Art", "Bea", "Bob", math.NaN())}, "0 to 1"},
		"twice in a team":   {[]game{doubles("Ann", "Ann", "Bea", "Bob", 1)}, "Ann stands in it twice"},
		"on both sides":     {[]game{doubles("Ann", "Art", "Bea", "Art", 1)}, "Art stands in it twice"},
		"out of order":      {[]game{{A: []string{"Ann"}, B: []string{"Bea"}, Week: 2}, {A: []string{"Ann"}, B: []string{"Bea"}, Week: 1}}, "in the order"},
		"at no time at all": {[]game{{A: []string{"Ann"}, B: []string{"Bea"}}, {A: []string{"Ann"}, B: []string{"Bea"}, Week: math.NaN()}}, "in the order"},
	} {
		if _, err := rating.Replay(rating.Default(), nil, c.games); err == nil || !strings.Contains(err.Error(), c.reason) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestTableIsInOrderOfTheMean(t *testing.T) {
	table, err := rating.Replay(rating.Default(), nil, []game{
		doubles("Ann", "Art", "Bea", "Bob", 0),
		doubles("Ann", "Bea", "Art", "Bob", 0),
		doubles("Ann", "Bob", "Art", "Bea", 0),
	})
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range table {
		if p.Games != 3 || !p.Comparable || p.Group != 0 {
			t.Errorf("%+v", p)
		}
		if i > 0 && p.Mu > table[i-1].Mu {
			t.Errorf("%v stands below %v", p, table[i-1])
		}
	}
	if table[3].Who != "Ann" {
		t.Errorf("%v is last after three losses of Ann", table[3].Who)
	}
	if _, known := table.Of("Zoe"); known {
		t.Error("somebody who did not play is in the table")
	}
}

// The order is that of the means: somebody with few games is not put below for being unsure.
func TestTableLooksAtMeansAlone(t *testing.T) {
	start := map[string]rating.Rating{"Ann": {Mu: 26, Sigma: 8}, "Art": {Mu: 25, Sigma: 1}, "Bea": {Mu: 24, Sigma: 1}, "Bob": {Mu: 23, Sigma: 8}}
	table, err := rating.Replay(rating.Default(), start, []game{{A: []string{"Ann"}, B: []string{"Art"}, Share: 0.55}, {A: []string{"Bea"}, B: []string{"Bob"}, Share: 0.55}})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"Ann", "Art", "Bea", "Bob"} {
		if table[i].Who != want {
			t.Errorf("place %d has %v with %v, not %s", i+1, table[i].Who, table[i].Rating, want)
		}
	}
}

func TestPeopleWhoseGamesDoNotConnectThem(t *testing.T) {
	court := func(a, b, c, d string) []game {
		return []game{doubles(a, b, c, d, 1), doubles(a, c, b, d, 1), doubles(a, d, b, c, 1)}
	}
	first := court("Ann", "Art", "Bea", "Bob")
	for name, c := range map[string]struct {
		games      []game
		comparable int
	}{
		"one court":                           {first, 4},
		"two courts that never mix":           {append(court("Cid", "Cora", "Dan", "Dora"), first...), 0},
		"and a game of one against the other": {append(append(court("Cid", "Cora", "Dan", "Dora"), first...), doubles("Ann", "Art", "Cid", "Dan", 1)), 8},
		"but not one with one of each":        {append(append(court("Cid", "Cora", "Dan", "Dora"), first...), doubles("Ann", "Cid", "Bea", "Dan", 1)), 0},
		"a newcomer's singles game":           {append(court("Ann", "Art", "Bea", "Bob"), game{A: []string{"Cid"}, B: []string{"Ann"}}), 5},
		"two others somewhere else":           {append(court("Ann", "Art", "Bea", "Bob"), game{A: []string{"Cid"}, B: []string{"Dan"}}), 4},
		"the same partners all evening":       {[]game{first[0], first[0], first[0]}, 0},
	} {
		table, err := rating.Replay(rating.Default(), nil, c.games)
		if err != nil {
			t.Fatal(err)
		}
		count := 0
		for _, p := range table {
			if p.Comparable {
				count++
			}
		}
		if count != c.comparable {
			t.Errorf("%s: %d people can be compared, want %d", name, count, c.comparable)
		}
	}
}
