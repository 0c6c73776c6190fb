package scheduler

import (
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"club/quadrille/scheduler/night"
)

// TestWishesAreKeptOrTold draws nights on which people come late, leave early and ask for partners a number of
// times. A wish for which both have games enough is kept, and one that is not kept is told.
//
// QUADRILLE_LONG=1 draws 250 of them.
func TestWishesAreKeptOrTold(t *testing.T) {
	asked, short := 0, 0
	for seed := range uint64(wishNights()) {
		p := anyRoster(seed)
		d := rand.New(rand.NewPCG(seed, 10))
		for range 1 + d.IntN(3) {
			a, b := Player(d.IntN(len(p.People))), Player(d.IntN(len(p.People)))
			if a != b && !named(p.Together, a, b) {
				p.Together = append(p.Together, Pair{A: a, B: b, Times: 1 + d.IntN(2)})
			}
		}
		rounds, err := Plan(t.Context(), p, Budget{})
		if err != nil {
			continue
		}
		told := strings.Join(Unkept(p, rounds), "\n")
		for _, w := range p.Together {
			asked++
			times, together, games := 0, 0, [2]int{}
			for r, round := range rounds {
				together += night.One(p.People[w.A].PresentIn(r) && p.People[w.B].PresentIn(r))
				for _, g := range round.Games {
					times += night.One(g.Partners(w.A, w.B))
					games[0] += night.One(slices.Contains(g.Players(), w.A))
					games[1] += night.One(slices.Contains(g.Players(), w.B))
				}
			}
			if times >= min(w.Times, together) {
				continue
			}
			short++
			if !strings.Contains(told, p.NameOf(w.A)+" and "+p.NameOf(w.B)) {
				t.Errorf("night %d: %+v are partners %d times, and nobody tells: %s", seed, w, times, told)
			}
			if times < min(w.Times, together, games[0], games[1]) {
				t.Errorf("night %d: %+v are partners %d times in %d and %d games", seed, w, times, games[0], games[1])
			}
		}
	}
	t.Logf("%d of %d wishes kept, the others told", asked-short, asked)
}

func named(list []Pair, a, b Player) bool {
	for _, w := range list {
		if w.A == a || w.A == b || w.B == a || w.B == b {
			return true
		}
	}
	return false
}

func wishNights() int {
	if os.Getenv("QUADRILLE_LONG") != "" {
		return 250
	}
	return 40
}
