package bound

import (
	"slices"
	"testing"

	"club/quadrille/scheduler/night"
)

// TestWhatRoundsDidNotKeepBindsNobody: a bound relies on nothing of the problem that the rounds themselves broke, and
// on everything else.
func TestWhatRoundsDidNotKeepBindsNobody(t *testing.T) {
	game := func(a, b, c, d night.Player) []night.Round {
		return []night.Round{{Games: []night.Game{{A: night.Team{a, b}, B: night.Team{c, d}}}}}
	}
	people := func(groups string) (out []night.Person) {
		for _, g := range groups {
			out = append(out, night.Person{Group: string(g)})
		}
		return out
	}
	for _, c := range []struct {
		name          string
		format        night.Format
		groups        string
		rounds        []night.Round
		apart, unteam bool // the wish of 0 and 1 not to meet, or not to be partners, is left
		want          night.Format
		together      bool // the set pairs are wishes now
	}{
		{"kept", night.Rotating, "aaaaaa", game(0, 2, 3, 4), true, true, night.Rotating, false},
		{"they met", night.Rotating, "aaaaaa", game(0, 2, 1, 4), false, true, night.Rotating, false},
		{"they were partners", night.Rotating, "aaaaaa", game(0, 1, 2, 4), false, false, night.Rotating, false},
		{"mixed and kept", night.Mixed, "ababab", game(0, 3, 2, 5), true, true, night.Mixed, false},
		{"two of a group", night.Mixed, "ababab", game(0, 2, 3, 5), true, true, night.Rotating, false},
		{"set pairs", night.Pairs, "aaaaaa", game(2, 3, 4, 5), true, true, night.Pairs, false},
		{"a pair parted", night.Pairs, "aaaaaa", game(2, 4, 3, 5), true, true, night.Rotating, true},
		{"somebody unknown", night.Pairs, "aaaaaa", game(2, 99, 4, 5), true, true, night.Pairs, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := night.Problem{
				Format: c.format, People: people(c.groups), Courts: make([]night.CourtSpec, 1),
				NeverMeet: []night.Pair{{A: 0, B: 1}}, NeverPartner: []night.Pair{{A: 1, B: 0}},
			}
			p.Together = []night.Pair{{A: 2, B: 5, Times: 1}}
			if c.format == night.Pairs {
				p.Together = []night.Pair{{A: 0, B: 1}} // the others are paired in their order
			}
			got := Kept(p, c.rounds)
			if (len(got.NeverMeet) == 1) != c.apart || (len(got.NeverPartner) == 1) != c.unteam || got.Format != c.want {
				t.Errorf("left are %v, %v and %v", got.NeverMeet, got.NeverPartner, got.Format)
			}
			if pair := (night.Pair{A: 2, B: 3}); slices.Contains(got.Together, pair) != c.together {
				t.Errorf("together are %v", got.Together)
			}
			if c.format != night.Pairs && len(got.Together) != 1 && got.Format == c.format {
				t.Errorf("the wish is lost: %v", got.Together)
			}
		})
	}
}
