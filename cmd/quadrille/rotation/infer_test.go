package rotation

import (
	"slices"
	"testing"

	"club/quadrille/scheduler"
)

func game(a1, a2, b1, b2 scheduler.Player) scheduler.Round {
	return scheduler.Round{Games: []scheduler.Game{{A: scheduler.Team{a1, a2}, B: scheduler.Team{b1, b2}}}}
}

func TestGroupsFollowFromPartners(t *testing.T) {
	people := make([]scheduler.Person, 8)
	findGroups(people, []scheduler.Round{game(0, 1, 2, 3), game(0, 3, 2, 1), game(4, 5, 6, 7)})
	sizes := map[string]int{}
	for _, p := range people {
		sizes[p.Group]++
	}
	for _, pair := range [][2]int{{0, 1}, {2, 3}, {0, 3}, {2, 1}, {4, 5}, {6, 7}} {
		if people[pair[0]].Group == people[pair[1]].Group {
			t.Errorf("partners %v are of one group: %+v", pair, people)
		}
	}
	if sizes["1"] != 4 || sizes["2"] != 4 {
		t.Errorf("groups of %v are not balanced", sizes)
	}
}

func TestStatedGroupsStay(t *testing.T) {
	people := []scheduler.Person{{Group: "x"}, {Group: "x"}, {}, {}}
	before := slices.Clone(people)
	findGroups(people, []scheduler.Round{game(0, 1, 2, 3)})
	for i := range people {
		if people[i].Group != before[i].Group {
			t.Errorf("person %d went from %q to %q", i, before[i].Group, people[i].Group)
		}
	}
}

func TestSetPairsAreThoseOfTheFirstGames(t *testing.T) {
	p := scheduler.Problem{People: make([]scheduler.Person, 6), Together: []scheduler.Pair{{A: 0, B: 1}}}
	got := foundPairs(p, []scheduler.Round{game(0, 1, 3, 2), game(4, 5, 2, 4)})
	want := []scheduler.Pair{{A: 2, B: 3}, {A: 4, B: 5}}
	if !slices.Equal(got, want) {
		t.Errorf("pairs %v, want %v", got, want)
	}
}
