package design

import (
	"fmt"
	"testing"
)

func TestMixedRotations(t *testing.T) {
	for men := 2; men <= 24; men++ {
		for women := 2; women <= 24; women++ {
			rounds, ok := MixedRotation(men, women)
			if !ok {
				t.Fatalf("MixedRotation(%d, %d): none", men, women)
			}
			if err := checkMixed(men, women, rounds); err != nil {
				t.Errorf("MixedRotation(%d, %d): %v", men, women, err)
			}
		}
	}
	for _, sizes := range [][2]int{{1, 5}, {5, 1}, {0, 0}, {-2, 4}} {
		if rounds, ok := MixedRotation(sizes[0], sizes[1]); ok || rounds != nil {
			t.Errorf("MixedRotation(%d, %d) returns %d rounds, ok %v", sizes[0], sizes[1], len(rounds), ok)
		}
	}
}

// TestMixedBenchIsShared: while the larger group is at most twice the smaller, nobody of it sits out
// twice running when the smaller is even.
func TestMixedBenchIsShared(t *testing.T) {
	for men := 2; men <= 16; men += 2 {
		for women := men; women <= 2*men; women++ {
			rounds, _ := MixedRotation(men, women)
			for r := 1; r < len(rounds); r++ {
				for p := men; p < men+women; p++ {
					if !plays(rounds[r-1], p) && !plays(rounds[r], p) {
						t.Errorf("%d men, %d women: %d sits out rounds %d and %d", men, women, p, r, r+1)
					}
				}
			}
		}
	}
}

func plays(round []Table, p int) bool { return !free(Table{p, p, p, p}, round) }

func BenchmarkMixedRotation(b *testing.B) {
	for _, sizes := range [][2]int{{12, 12}, {20, 24}} {
		b.Run(fmt.Sprintf("%d men, %d women", sizes[0], sizes[1]), func(b *testing.B) {
			for b.Loop() {
				MixedRotation(sizes[0], sizes[1])
			}
		})
	}
}
