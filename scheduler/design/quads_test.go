package design

import (
	"strconv"
	"testing"
)

// bestKnown are the greatest numbers of rounds in which nobody meets twice that this catalogue has.
// To 64 people they are the best known (testdata/README.md).
var bestKnown = map[int]int{
	4: 1, 8: 1, 12: 1, 16: 5, 20: 5, 24: 7, 28: 9, 32: 10, 36: 11, 40: 13, 44: 14, 48: 15,
	52: 17, 56: 18, 60: 19, 64: 21, 68: 17, 72: 23, 76: 25, 80: 25, 84: 27, 88: 29, 92: 23, 96: 31, 100: 25,
}

func TestNobodyMeetsTwice(t *testing.T) {
	for people := 4; people <= 240; people += 4 {
		rounds, ok := Quads(people)
		if !ok {
			t.Errorf("Quads(%d): none", people)
		}
		if err := checkQuads(people, rounds); err != nil {
			t.Errorf("Quads(%d): %v", people, err)
		}
		if want, known := bestKnown[people]; known && len(rounds) != want {
			t.Errorf("Quads(%d) has %d rounds, want %d", people, len(rounds), want)
		}
		if people > 100 && len(rounds) < people/12 {
			t.Errorf("Quads(%d) has only %d rounds", people, len(rounds))
		}
		if len(rounds) > (people-1)/3 {
			t.Errorf("Quads(%d) has %d rounds, more than anybody has others to meet", people, len(rounds))
		}
	}
}

// roundsWithRest are the numbers of rounds when people%4 sit out each round, by the number of people.
var roundsWithRest = map[int]int{
	5: 1, 6: 1, 7: 1, 9: 1, 10: 1, 11: 1, 13: 1, 14: 1, 15: 1,
	17: 4, 18: 4, 19: 6, 21: 5, 22: 5, 23: 7, 25: 7, 26: 7, 27: 9,
	29: 9, 30: 9, 31: 10, 33: 10, 34: 10, 35: 11, 37: 11, 38: 11, 39: 13,
	41: 13, 42: 13, 43: 14, 45: 14, 46: 14, 47: 14, 49: 15, 50: 15, 51: 17,
}

func TestNobodyMeetsTwiceNorRestsTwice(t *testing.T) {
	for people := -1; people <= 67; people++ {
		rounds, ok := mostWithRest(people)
		if want := people >= 5 && people%4 != 0; ok != want {
			t.Errorf("%d people: ok is %v", people, ok)
		}
		if !ok {
			continue
		}
		if want, known := roundsWithRest[people]; known && len(rounds) < want {
			t.Errorf("%d people has %d rounds, want %d", people, len(rounds), want)
		}
		if err := checkQuads(people, rounds); err != nil {
			t.Errorf("%d people: %v", people, err)
		}
		for p, games := range tally(people, rounds).games {
			if games < len(rounds)-1 {
				t.Errorf("%d people: %d sits out %d times", people, p, len(rounds)-games)
			}
		}
	}
}

// mostWithRest returns as many rounds as the catalogue has.
func mostWithRest(people int) (rounds [][]Table, ok bool) {
	for r := 1; ; r++ {
		more, can := quadsWithRest(people, r)
		if !can {
			return rounds, ok
		}
		rounds, ok = more, true
	}
}

func TestNoQuadsForOtherNumbers(t *testing.T) {
	for _, people := range []int{-4, 0, 1, 2, 3, 5, 18, 31} {
		if rounds, ok := Quads(people); ok || rounds != nil {
			t.Errorf("Quads(%d) returns %d rounds, ok %v", people, len(rounds), ok)
		}
	}
}

func TestPublishedRoundsOfFours(t *testing.T) {
	var published map[string][][]Table
	load(t, "golfer_rounds.json", &published)
	for name, rounds := range published {
		people, err := strconv.Atoi(name)
		if err != nil {
			t.Fatal(err)
		}
		if err := checkQuads(people, rounds); err != nil {
			t.Errorf("published rounds for %d people: %v", people, err)
		}
		ours, _ := Quads(people)
		if len(ours) < len(rounds) {
			t.Errorf("Quads(%d) has %d rounds, published are %d", people, len(ours), len(rounds))
		}
	}
}

func BenchmarkQuads(b *testing.B) {
	for _, people := range []int{32, 48, 100} {
		b.Run(strconv.Itoa(people), func(b *testing.B) {
			for b.Loop() {
				Quads(people)
			}
		})
	}
}
