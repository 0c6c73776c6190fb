package night

import (
	"slices"
	"strings"
	"testing"
)

// TestSameGameWhateverTheOrder: a game is the same with teams or partners the other way round, and no other.
func TestSameGameWhateverTheOrder(t *testing.T) {
	g := Game{Court: 1, A: Team{0, 1}, B: Team{2, 3}}
	for _, c := range []struct {
		name string
		h    Game
		want bool
	}{
		{"itself", g, true},
		{"partners the other way round", Game{Court: 1, A: Team{1, 0}, B: Team{3, 2}}, true},
		{"teams the other way round", Game{Court: 1, A: Team{2, 3}, B: Team{0, 1}}, true},
		{"another court", Game{Court: 2, A: Team{0, 1}, B: Team{2, 3}}, false},
		{"another court, teams the other way round", Game{Court: 2, A: Team{2, 3}, B: Team{0, 1}}, false},
		{"other partners", Game{Court: 1, A: Team{0, 2}, B: Team{1, 3}}, false},
		{"one team of it", Game{Court: 1, A: Team{0, 1}, B: Team{2, 4}}, false},
		{"the other team of it", Game{Court: 1, A: Team{4, 3}, B: Team{0, 1}}, false},
	} {
		if got := g.Same(c.h); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
		if got := (Round{Games: []Game{c.h}}).Has(g); got != c.want {
			t.Errorf("a round with %s: %v", c.name, got)
		}
	}
	if !g.Partners(1, 0) || !g.Partners(2, 3) || g.Partners(1, 2) || g.Partners(0, 4) {
		t.Error("who is a team of the game")
	}
	single := Game{A: Team{0, Nobody}, B: Team{2, Nobody}}
	if !single.Singles() || g.Singles() || !slices.Equal(single.Players(), []Player{0, 2}) {
		t.Error("singles")
	}
}

// TestNamesThatAreNone are refused with the names that there are, and what has no name is not written.
func TestNamesThatAreNone(t *testing.T) {
	for _, b := range Benchings() {
		if got, err := ParseBenching(" " + strings.ToUpper(b.String()) + " "); err != nil || got != b {
			t.Errorf("%s: %v, %v", b, got, err)
		}
	}
	if _, err := ParseBenching("soft"); err == nil || !strings.Contains(err.Error(), "use one of mixed, strict") {
		t.Errorf("a bench that is none: %v", err)
	}
	for _, k := range []int{len(formatNames), 250} {
		if text, err := Format(k).MarshalText(); err == nil {
			t.Errorf("format %d is written as %q", k, text)
		}
	}
	for _, k := range []int{len(benchingNames), 250} {
		if text, err := Benching(k).MarshalText(); err == nil {
			t.Errorf("benching %d is written as %q", k, text)
		}
	}
}

// hall is a problem of people in groups, one letter each, on two courts for one round.
func hall(format Format, groups string) *Problem {
	p := &Problem{Format: format, Courts: make([]CourtSpec, 2), Rounds: 1}
	for _, g := range groups {
		p.People = append(p.People, Person{Group: string(g)})
	}
	return p
}

// TestGamesByNumbersAlone: a mixed game takes two of each group, one of set pairs two whole pairs.
func TestGamesByNumbersAlone(t *testing.T) {
	for _, c := range []struct {
		format  Format
		groups  string
		courts  int
		want    int
		pools   [2]int // the sizes of those among whom sitting out is shared
		awayTwo bool   // the second person comes later
	}{
		{Rotating, "aaaaaaa", 2, 1, [2]int{7}, false},
		{Rotating, "aaaaaaaa", 2, 2, [2]int{8}, false},
		{Rotating, "aaaaaaaaaaaa", 2, 2, [2]int{12}, false},
		{Mixed, "aabb", 2, 1, [2]int{2, 2}, false},
		{Mixed, "aaabb", 2, 1, [2]int{3, 2}, false},
		{Mixed, "aaaabbb", 2, 1, [2]int{4, 3}, false},
		{Mixed, "aaaabbbb", 2, 2, [2]int{4, 4}, false},
		{Mixed, "aaaaaaabb", 2, 1, [2]int{7, 2}, false},
		{Mixed, "abbbbbb", 2, 0, [2]int{1, 6}, false},
		{Pairs, "aaaa", 2, 1, [2]int{4}, false},
		{Pairs, "aaaaaa", 2, 1, [2]int{6}, false},
		{Pairs, "aaaaaaaa", 2, 2, [2]int{8}, false},
		{Pairs, "aaaaaaaa", 2, 1, [2]int{6, 1}, true},
	} {
		p := hall(c.format, c.groups)
		if c.awayTwo {
			p.People[1].Arrive = 5
		}
		n := New(p)
		if got := n.MostGames(0, c.courts); got != c.want {
			t.Errorf("%v of %s: %d games, want %d", c.format, c.groups, got, c.want)
		}
		for k, pool := range n.Pools(0) {
			if len(pool) != c.pools[k] {
				t.Errorf("%v of %s: pool %d has %d, want %d", c.format, c.groups, k, len(pool), c.pools[k])
			}
		}
	}
}

// TestRestfulLeavesEnoughOnTheBench: at most k of k+1 rounds for everybody, but never no game for those who are there.
func TestRestfulLeavesEnoughOnTheBench(t *testing.T) {
	for _, c := range []struct{ people, run, games, want int }{
		{16, 0, 4, 4},
		{16, 3, 4, 3}, // 16·3/4 = 12 may play
		{16, 1, 4, 2},
		{24, 3, 4, 4}, // 18 may play, and the courts hold 16
		{4, 1, 1, 1},
	} {
		p := hall(Rotating, strings.Repeat("a", c.people))
		p.MaxRun = c.run
		if got := New(p).Restful(0, c.games); got != c.want {
			t.Errorf("%d people, at most %d running, %d courts: %d games, want %d", c.people, c.run, c.games, got, c.want)
		}
	}
}

// TestWhyNoGame names what is missing.
func TestWhyNoGame(t *testing.T) {
	for _, c := range []struct {
		p      *Problem
		closed bool
		want   string
	}{
		{hall(Rotating, "aaaa"), true, "no court is open in round 1"},
		{hall(Rotating, "aaa"), false, "round 1 has 3 of the 4 people"},
		{hall(Mixed, "abbb"), false, "round 1 has 1 and 3"},
		{hall(Rotating, "aaaa"), false, "of the 4 people of round 1 no four may play together"},
	} {
		if c.closed {
			for k := range c.p.Courts {
				c.p.Courts[k].Open = 9
			}
		}
		if got := New(c.p).WhyNoGame(0); len(got) != 1 || !strings.Contains(got[0], c.want) {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// TestAWishBesideAFixedPartner: nobody who always has another partner can be somebody's partner for a while, and a
// fixed pair may say so twice.
func TestAWishBesideAFixedPartner(t *testing.T) {
	for _, c := range []struct {
		together []Pair
		want     bool
	}{
		{[]Pair{{A: 0, B: 1}, {A: 1, B: 2, Times: 2}}, true},
		{[]Pair{{A: 0, B: 1}, {A: 2, B: 1, Times: 2}}, true},
		{[]Pair{{A: 0, B: 1}, {A: 1, B: 0, Times: 1}}, false},
		{[]Pair{{A: 0, B: 1}, {A: 2, B: 3, Times: 1}}, false},
	} {
		p := hall(Rotating, "aaaaaaaa")
		p.Together, p.Rounds = c.together, 4
		said := strings.Contains(strings.Join(Contradictions(p), "\n"), "always has another partner")
		if said != c.want {
			t.Errorf("%v: %v", c.together, Contradictions(p))
		}
	}
}
