package design

import (
	"slices"
	"strconv"
	"testing"

	"club/quadrille/scheduler/design/ring"
)

func TestEveryWhistTournamentTo101(t *testing.T) {
	for v := 4; v <= 101; v++ {
		rounds, ok := Whist(v)
		if want := v%4 <= 1; ok != want {
			t.Errorf("Whist(%d): ok is %v", v, ok)
		}
		if !ok {
			continue
		}
		if err := checkWhist(v, rounds); err != nil {
			t.Errorf("Whist(%d): %v", v, err)
		}
	}
}

func TestWhistTournamentsTo201(t *testing.T) {
	unknown := []int{108, 129, 132, 140, 152, 168, 177, 189}
	for v := 104; v <= 201; v++ {
		rounds, ok := Whist(v)
		if want := v%4 <= 1 && !slices.Contains(unknown, v); ok != want {
			t.Errorf("Whist(%d): ok is %v", v, ok)
		}
		if !ok {
			continue
		}
		if err := checkWhist(v, rounds); err != nil {
			t.Errorf("Whist(%d): %v", v, err)
		}
	}
}

func TestNoWhistForOtherNumbers(t *testing.T) {
	for _, v := range []int{-4, 0, 1, 2, 3, 6, 7, 10, 98, 99} {
		if rounds, ok := Whist(v); ok || rounds != nil {
			t.Errorf("Whist(%d) returns %d rounds, ok %v", v, len(rounds), ok)
		}
	}
}

// TestPublishedStarters develops base rounds from outside and holds them to the same check.
func TestPublishedStarters(t *testing.T) {
	var starters map[string][]Table
	load(t, "whist_starters.json", &starters)
	for name, base := range starters {
		v, err := strconv.Atoi(name)
		if err != nil {
			t.Fatal(err)
		}
		r := ring.Integers(v - 1 + v%2)
		var rounds [][]Table
		for shift := range r.N() {
			rounds = append(rounds, relabelRound(base, func(p int) int {
				if p >= r.N() {
					return p
				}
				return (p + shift) % r.N()
			}))
		}
		if err := checkWhist(v, rounds); err != nil {
			t.Errorf("published starter for %d people: %v", v, err)
		}
	}
}

// TestResolvedBlocksRepeatNothingEarly: where each two share one block, a third of the whist
// tournament passes before anybody meets anybody twice.
func TestResolvedBlocksRepeatNothingEarly(t *testing.T) {
	for _, v := range []int{4, 16, 28, 40, 52, 64, 76, 88} {
		rounds, _ := Whist(v)
		if err := checkQuads(v, rounds[:(v-1)/3]); err != nil {
			t.Errorf("first third of Whist(%d): %v", v, err)
		}
	}
}

func BenchmarkWhist(b *testing.B) {
	for _, v := range []int{40, 60, 93, 100, 101} {
		b.Run(strconv.Itoa(v), func(b *testing.B) {
			for b.Loop() {
				Whist(v)
			}
		})
	}
}
