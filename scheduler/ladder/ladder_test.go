package ladder

import (
	"slices"
	"testing"

	"club/quadrille/scheduler/night"
)

// three is a problem of people on three courts after one round, in which 0 to 3, 4 to 7 and 8 to 11 played.
func three(people int) (night.Problem, []night.Game) {
	p := night.Problem{People: make([]night.Person, people), Courts: make([]night.CourtSpec, 3), Seed: 5}
	games := []night.Game{
		{Court: 0, A: night.Team{0, 1}, B: night.Team{2, 3}},
		{Court: 1, A: night.Team{4, 5}, B: night.Team{6, 7}},
		{Court: 2, A: night.Team{8, 9}, B: night.Team{10, 11}},
	}
	p.History = []night.Round{{Games: games}}
	return p, games
}

func onCourt(r night.Round, c night.Court) []night.Player {
	for _, g := range r.Games {
		if g.Court == c {
			return slices.Sorted(slices.Values(g.Players()))
		}
	}
	return nil
}

// TestWinnersGoUpAndLosersDown, stay where there is no further court, and are split from their partners.
func TestWinnersGoUpAndLosersDown(t *testing.T) {
	for seed := range uint64(20) {
		p, games := three(12)
		p.Seed = seed
		r, err := Next(p, []Result{{games[0], 0}, {games[1], 1}, {games[2], 0}})
		if err != nil {
			t.Fatal(err)
		}
		for c, want := range [][]night.Player{{0, 1, 6, 7}, {2, 3, 8, 9}, {4, 5, 10, 11}} {
			if got := onCourt(r, night.Court(c)); !slices.Equal(got, want) {
				t.Fatalf("court %d has %v, want %v", c, got, want)
			}
		}
		for _, g := range r.Games {
			for _, before := range games {
				if before.Partners(g.A[0], g.A[1]) || before.Partners(g.B[0], g.B[1]) {
					t.Errorf("%v come together and stay partners", g)
				}
			}
		}
	}
}

// TestALevelGameIsDecidedByLot: over many seeds either team goes up, and always one as a whole.
func TestALevelGameIsDecidedByLot(t *testing.T) {
	up := map[night.Player]int{}
	for seed := range uint64(40) {
		p, games := three(12)
		p.Seed = seed
		r, err := Next(p, []Result{{games[0], 0}, {games[1], -1}, {games[2], 0}})
		if err != nil {
			t.Fatal(err)
		}
		top := onCourt(r, 0)
		if got := top[2:]; !slices.Equal(got, []night.Player{4, 5}) && !slices.Equal(got, []night.Player{6, 7}) {
			t.Fatalf("on the top court are %v", top)
		}
		up[top[2]]++
	}
	if up[4] < 5 || up[6] < 5 {
		t.Errorf("of 40 lots the teams won %d and %d", up[4], up[6])
	}
}

// TestWhoIsNewEntersAtTheBottom, also where more have left than come.
func TestWhoIsNewEntersAtTheBottom(t *testing.T) {
	p, games := three(16)
	for _, i := range []int{0, 1, 10, 11} {
		p.People[i].Leave = 1 // after the round that was played
	}
	r, err := Next(p, []Result{{games[0], 1}, {games[1], 0}, {games[2], 0}})
	if err != nil {
		t.Fatal(err)
	}
	if got := onCourt(r, 0); !slices.Equal(got, []night.Player{2, 3, 4, 5}) {
		t.Errorf("the top court has %v", got)
	}
	if got := onCourt(r, 2); !slices.Equal(got, []night.Player{12, 13, 14, 15}) {
		t.Errorf("the bottom court has %v, not the new people", got)
	}
}

// TestAResultOfAnotherNightIsRefused: a court or a person that the list has not.
func TestAResultOfAnotherNightIsRefused(t *testing.T) {
	p, games := three(12)
	for name, change := range map[string]func(*night.Game){
		"a court too many":     func(g *night.Game) { g.Court = 3 },
		"a court below":        func(g *night.Game) { g.Court = -1 },
		"a person too many":    func(g *night.Game) { g.A[0] = 12 },
		"a person of no place": func(g *night.Game) { g.B[1] = -7 },
	} {
		g := games[1]
		change(&g)
		if _, err := Next(p, []Result{{g, 0}}); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}
