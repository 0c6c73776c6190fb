package design

import (
	"strconv"
	"testing"
)

// roundsForCouples are the numbers of rounds promised in SpouseAvoiding's comment.
var roundsForCouples = map[int]int{
	4: 3, 5: 5, 7: 7, 8: 7, 9: 9, 10: 12, 11: 11, 12: 14, 13: 13, 14: 16,
	15: 15, 16: 15, 17: 17, 18: 20, 19: 19, 20: 20, 28: 28, 35: 35,
}

func TestSpousesNeverShareACourt(t *testing.T) {
	for couples, want := range roundsForCouples {
		rounds, ok := SpouseAvoiding(couples)
		if !ok {
			t.Errorf("SpouseAvoiding(%d): none", couples)
		}
		if len(rounds) != want {
			t.Errorf("SpouseAvoiding(%d) has %d rounds, want %d", couples, len(rounds), want)
		}
		if err := checkSpouseAvoiding(couples, rounds); err != nil {
			t.Errorf("SpouseAvoiding(%d): %v", couples, err)
		}
	}
}

func TestNearMissesForCouples(t *testing.T) {
	cases := []struct {
		couples, games    int
		spousesOppose     int // times in all
		repeatedOpponents int // Σ max(0, times-1) over all pairs
	}{
		{couples: 2, games: 1, spousesOppose: 2},
		{couples: 3, games: 3, spousesOppose: 6, repeatedOpponents: 3},
		{couples: 6, games: 15, repeatedOpponents: 5},
	}
	for _, c := range cases {
		rounds, ok := SpouseAvoiding(c.couples)
		if ok {
			t.Errorf("SpouseAvoiding(%d) claims a design that does not exist", c.couples)
		}
		n, games, oppose, repeats := 2*c.couples, 0, 0, 0
		if err := checkRounds(n, -1, rounds); err != nil {
			t.Errorf("SpouseAvoiding(%d): %v", c.couples, err)
		}
		if err := checkSeats(c.couples, rounds); err != nil {
			t.Errorf("SpouseAvoiding(%d): %v", c.couples, err)
		}
		count := tally(n, rounds)
		for _, round := range rounds {
			games += len(round)
		}
		for p := range n {
			for q := range p {
				spouses := p-q == c.couples
				if spouses {
					oppose += count.opponents[p*n+q]
				}
				repeats += max(0, count.opponents[p*n+q]-1)
				if most := 1; !spouses && count.partners[p*n+q] > most || spouses && count.partners[p*n+q] > 0 {
					t.Errorf("%d couples: %d and %d partner %d times", c.couples, q, p, count.partners[p*n+q])
				}
			}
		}
		if games != c.games || oppose != c.spousesOppose || repeats != c.repeatedOpponents {
			t.Errorf("%d couples: %d games, spouses oppose %d times, %d repeats; want %d, %d, %d",
				c.couples, games, oppose, repeats, c.games, c.spousesOppose, c.repeatedOpponents)
		}
	}
}

func TestNoCouplesDesignForOtherNumbers(t *testing.T) {
	for _, couples := range []int{-1, 0, 1} {
		if rounds, ok := SpouseAvoiding(couples); ok || rounds != nil {
			t.Errorf("SpouseAvoiding(%d) returns %d rounds, ok %v", couples, len(rounds), ok)
		}
	}
}

func TestPublishedGamesForCouples(t *testing.T) {
	var published map[string][]Table
	load(t, "couples.json", &published)
	for name, games := range published {
		couples, err := strconv.Atoi(name)
		if err != nil {
			t.Fatal(err)
		}
		var rounds [][]Table // the published games are in no rounds: one each
		for _, g := range games {
			rounds = append(rounds, []Table{{g[0], couples + g[1], g[2], couples + g[3]}})
		}
		if err := checkSpouseAvoiding(couples, rounds); err != nil {
			t.Errorf("published games for %d couples: %v", couples, err)
		}
	}
}
