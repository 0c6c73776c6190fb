package design

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// meetings is Σ C(m, 2) over all pairs of people who meet m times, counted anew.
func meetings(rounds [][]Table) (sum int) {
	met := map[[2]int]int{}
	for _, round := range rounds {
		for _, t := range round {
			for i, p := range t {
				for _, q := range t[:i] {
					pair := [2]int{min(p, q), max(p, q)}
					sum += met[pair]
					met[pair]++
				}
			}
		}
	}
	return sum
}

// drawRounds draws any valid schedule, with people sitting out.
func drawRounds(t *rapid.T) [][]Table {
	people := rapid.IntRange(4, 17).Draw(t, "people")
	everybody := make([]int, people)
	for p := range everybody {
		everybody[p] = p
	}
	rounds := make([][]Table, rapid.IntRange(0, 9).Draw(t, "rounds"))
	for r := range rounds {
		order := rapid.Permutation(everybody).Draw(t, "order")
		for range rapid.IntRange(1, people/4).Draw(t, "tables") {
			rounds[r] = append(rounds[r], Table(order[:4]))
			order = order[4:]
		}
	}
	return rounds
}

func TestPrefixTakesRoundsOfTheDesign(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rounds := drawRounds(t)
		r := rapid.IntRange(-2, 12).Draw(t, "r")
		got := Prefix(rounds, r)
		if want := max(0, min(r, len(rounds))); len(got) != want {
			t.Fatalf("%d rounds, want %d", len(got), want)
		}
		rest := slices.Clone(rounds)
		for _, round := range got {
			i := slices.IndexFunc(rest, func(other []Table) bool { return slices.Equal(round, other) })
			if i < 0 {
				t.Fatalf("round %v is not of the design, or taken twice", round)
			}
			rest = slices.Delete(rest, i, i+1)
		}
		if again := Prefix(rounds, r); !reflect.DeepEqual(got, again) {
			t.Fatal("the same rounds give another prefix the second time")
		}
	})
}

func TestPrefixIsNoWorseThanTheFirstRounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rounds := drawRounds(t)
		for r := range rounds {
			if got, plain := overlaps(Prefix(rounds, r)).total(), overlaps(rounds[:r]).total(); got > plain {
				t.Fatalf("%d rounds cost %d, the first ones as they are %d", r, got, plain)
			}
		}
	})
}

func TestOverlapsCountMeetings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rounds := drawRounds(t)
		if got, want := overlaps(rounds).total()%costPartners/costMeetings, meetings(rounds); got != want {
			t.Fatalf("Σ C(meetings, 2) is %d, overlaps say %d", want, got)
		}
	})
}

// TestPrefixFindsTheBestOfSmallDesigns compares with all choices of rounds.
func TestPrefixFindsTheBestOfSmallDesigns(t *testing.T) {
	for _, v := range []int{8, 9, 12, 13, 16, 17} {
		rounds, _ := Whist(v)
		for r := 1; r <= len(rounds); r++ {
			if got, best := meetings(Prefix(rounds, r)), leastMeetings(rounds, r); got != best {
				t.Errorf("%d rounds of Whist(%d): %d repeated meetings, the best choice has %d", r, v, got, best)
			}
		}
	}
}

// leastMeetings tries all choices of r rounds.
func leastMeetings(rounds [][]Table, r int) int {
	w := overlaps(rounds)
	best := -1
	var choose func(from int, set []int, cost int)
	choose = func(from int, set []int, cost int) {
		if len(set) == r {
			if best < 0 || cost < best {
				best = cost
			}
			return
		}
		for a := from; a <= len(rounds)-(r-len(set)); a++ {
			more := cost
			for _, b := range set {
				more += w[a][b]
			}
			if best < 0 || more < best {
				choose(a+1, append(set, a), more)
			}
		}
	}
	choose(0, nil, 0)
	return best % costPartners / costMeetings
}

func TestBestRoundsOfShortNights(t *testing.T) {
	for _, known := range []map[int]int{bestKnown, roundsWithRest} {
		for people, most := range known {
			for r := 1; r <= most; r++ {
				rounds, ok := Best(people, r)
				if !ok || len(rounds) != r {
					t.Fatalf("Best(%d, %d): %d rounds, ok %v", people, r, len(rounds), ok)
				}
				if err := checkQuads(people, rounds); err != nil {
					t.Errorf("Best(%d, %d): %v", people, r, err)
				}
			}
		}
	}
}

func TestBestRoundsRepeatNoPartners(t *testing.T) {
	for people := 4; people <= 51; people++ {
		for r := 1; r <= people; r++ {
			rounds, ok := Best(people, r)
			want := people%4 <= 1 && r <= people-1+people%4 || r <= roundsWithRest[people]
			if ok != want {
				t.Fatalf("Best(%d, %d): ok is %v", people, r, ok)
			}
			if !ok {
				continue
			}
			if err := checkRounds(people, people/4, rounds); err != nil {
				t.Errorf("Best(%d, %d): %v", people, r, err)
			}
			for pair, times := range tally(people, rounds).partners {
				if times > 1 {
					t.Errorf("Best(%d, %d): %d and %d partner %d times", people, r, pair/people, pair%people, times)
				}
			}
		}
	}
	if _, ok := Best(16, 0); ok {
		t.Error("Best(16, 0) has rounds")
	}
}

func BenchmarkPrefix(b *testing.B) {
	for _, v := range []int{24, 40, 100} {
		rounds, _ := Whist(v)
		b.Run(fmt.Sprintf("10 of %d", v), func(b *testing.B) {
			for b.Loop() {
				Prefix(rounds, 10)
			}
		})
	}
}

func BenchmarkBest(b *testing.B) {
	for _, night := range [][2]int{{24, 8}, {48, 10}, {60, 16}, {100, 16}} {
		b.Run(fmt.Sprintf("%d people, %d rounds", night[0], night[1]), func(b *testing.B) {
			for b.Loop() {
				Best(night[0], night[1])
			}
		})
	}
}
