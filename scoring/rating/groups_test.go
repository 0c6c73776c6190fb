package rating

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
)

// gatherings are ways in which a club may play, as games between people from 0.
var gatherings = map[string]func(people, games int, r *rand.Rand) [][4]int{
	"anybody with anybody": func(people, games int, r *rand.Rand) (out [][4]int) {
		for range games {
			out = append(out, four(r.Perm(people)))
		}
		return out
	},
	"men with women": func(people, games int, r *rand.Rand) (out [][4]int) {
		for range games {
			m, w := r.Perm(people/2), r.Perm(people/2)
			out = append(out, [4]int{m[0], people/2 + w[0], m[1], people/2 + w[1]})
		}
		return out
	},
	"neighbours": func(people, games int, r *rand.Rand) (out [][4]int) {
		for range games {
			at := r.IntN(people - 5)
			p := r.Perm(6)
			out = append(out, [4]int{at + p[0], at + p[1], at + p[2], at + p[3]})
		}
		return out
	},
	"a chain": func(people, games int, _ *rand.Rand) (out [][4]int) {
		for i := range games {
			at := i % (people - 3)
			out = append(out, [4]int{at, at + 1, at + 2, at + 3})
		}
		return out
	},
	"two halls": func(people, games int, r *rand.Rand) (out [][4]int) {
		for i := range games {
			p := four(r.Perm(people / 2))
			for j := range p {
				p[j] += i % 2 * (people / 2)
			}
			out = append(out, p)
		}
		return append(out, [4]int{0, people / 2, 1, people/2 + 1}) // one game says nothing of the halls
	},
	"set pairs": func(people, games int, r *rand.Rand) (out [][4]int) {
		for range games {
			p := r.Perm(people / 2)
			out = append(out, [4]int{2 * p[0], 2*p[0] + 1, 2 * p[1], 2*p[1] + 1})
		}
		return out
	},
}

func four(p []int) [4]int { return [4]int{p[0], p[1], p[2], p[3]} }

// Groups are those that elimination finds, however many people there are and however they play.
func TestGroupsAreThoseOfTheDesign(t *testing.T) {
	for name, gather := range gatherings {
		for _, size := range []struct{ people, games int }{
			{40, 12}, {60, 90}, {100, 99}, {100, 130}, {120, 300}, {150, 160}, {300, 200},
		} {
			r := rand.New(rand.NewPCG(uint64(size.people), uint64(size.games)))
			var d Design
			var l links
			for _, g := range gather(size.people, size.games, r) {
				d.Add(g[:2], g[2:])
				l.add(g[:2], g[2:])
			}
			for _, part := range l.parts() {
				if got, want := part.sampled(), part.whole(); !slices.Equal(got, want) {
					t.Errorf("%s, %d people and %d games: drawn vectors give %v, want %v", name, size.people, size.games, got, want)
				}
			}
			if got, want := l.groups(), d.Groups(); !slices.Equal(got, want) {
				t.Errorf("%s, %d people and %d games: %v, want %v", name, size.people, size.games, got, want)
			}
		}
	}
}

// The work grows with the games: ten times the people with ten times the games are ten times the work, and not a
// hundred or a thousand times.
func TestTheWorkOfGroupsGrowsWithTheGames(t *testing.T) {
	work := func(people int) float64 {
		r := rand.New(rand.NewPCG(1, uint64(people)))
		var l links
		for range 5 * people {
			g := [4]int{}
			for i := range g {
				for {
					if g[i] = r.IntN(people); !slices.Contains(g[:i], g[i]) {
						break
					}
				}
			}
			l.add(g[:2], g[2:])
		}
		if groups := l.groups(); slices.Max(groups) > 0 {
			t.Errorf("%d people are in groups", people)
		}
		return float64(l.work) / float64(len(l.ends))
	}
	few := work(300)
	for _, people := range []int{1000, 3000} {
		if many := work(people); many > 2*few {
			t.Errorf("%d people take %.0f seats a game, and 300 take %.0f", people, many, few)
		}
	}
}

func BenchmarkGroups(b *testing.B) {
	for _, people := range []int{300, 1000, 3000} {
		for name, gather := range gatherings {
			var l links
			for _, g := range gather(people, 5*people, rand.New(rand.NewPCG(1, 1))) {
				l.add(g[:2], g[2:])
			}
			b.Run(fmt.Sprintf("%s %d", name, people), func(b *testing.B) {
				for b.Loop() {
					l.work = 0
					l.groups()
				}
				b.ReportMetric(float64(l.work)/float64(len(l.ends)), "seats/game")
			})
		}
	}
}

// TestNoiseIsSplitMix64 compares with the first outputs of that generator from the state 0, as its reference
// implementation by S. Vigna prints them (from memory).
func TestNoiseIsSplitMix64(t *testing.T) {
	for i, want := range []uint64{0xe220a8397b1dcdaf, 0x6e789e6aa1b965f4, 0x06c45d188009454f} {
		if got := noise(0, uint64(i)); got != float64(want>>11)/(1<<53) {
			t.Errorf("output %d is %v, want %v", i, got, float64(want>>11)/(1<<53))
		}
	}
}

// TestPartsAreThoseWhomGamesLink: two halls whose people never meet are two parts, and somebody without a game is one.
func TestPartsAreThoseWhomGamesLink(t *testing.T) {
	l := links{n: 9}
	l.add([]int{0, 1}, []int{2, 3})
	l.add([]int{7, 4}, []int{6, 5})
	l.add([]int{3, 1}, []int{0, 2})
	l.add([]int{4, 5}, []int{7, 6})
	var got [][]int
	for _, p := range l.parts() {
		got = append(got, p.people)
	}
	if want := [][]int{{0, 1, 2, 3}, {4, 5, 6, 7}, {8}}; !reflect.DeepEqual(got, want) {
		t.Errorf("the parts are %v, want %v", got, want)
	}
}

// TestTheMainGroupIsTheLargestAlone: of two that are as large neither is, and nobody alone is a group.
func TestTheMainGroupIsTheLargestAlone(t *testing.T) {
	for _, c := range []struct {
		groups []int
		want   int
	}{{[]int{0, 0, 1}, 0}, {[]int{0, 1, 1, 1, 0}, 1}, {[]int{0, 0, 1, 1}, -1}, {[]int{0, 1, 2}, -1}, {nil, -1}} {
		if got := mainGroup(c.groups); got != c.want {
			t.Errorf("of %v it is %d, want %d", c.groups, got, c.want)
		}
	}
}
