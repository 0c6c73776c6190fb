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
		if err := CheckQuads(people, rounds); err != nil {
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

// roundsWithRest are the numbers of rounds when people%4 sit out each round.
var roundsWithRest = map[int]int{19: 6, 23: 7, 27: 9, 29: 9, 30: 9, 31: 10, 34: 10, 35: 11, 38: 11, 39: 13, 42: 13, 43: 14, 51: 17}

func TestNobodyMeetsTwiceNorRestsTwice(t *testing.T) {
	for people := range 60 {
		rounds, ok := QuadsWithRest(people)
		if len(rounds) != roundsWithRest[people] || ok != (len(rounds) > 0) {
			t.Errorf("QuadsWithRest(%d): %d rounds, ok %v, want %d", people, len(rounds), ok, roundsWithRest[people])
		}
		if !ok {
			continue
		}
		if err := CheckQuads(people, rounds); err != nil {
			t.Errorf("QuadsWithRest(%d): %v", people, err)
		}
		for p, games := range tally(people, rounds).games {
			if games < len(rounds)-1 {
				t.Errorf("QuadsWithRest(%d): %d sits out %d times", people, p, len(rounds)-games)
			}
		}
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
		if err := CheckQuads(people, rounds); err != nil {
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
