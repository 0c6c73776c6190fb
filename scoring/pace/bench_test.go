package pace_test

import (
	"testing"

	"club/quadrille/scoring"
	"club/quadrille/scoring/pace"
)

func BenchmarkDistribution(b *testing.B) {
	for b.Loop() {
		if _, err := pace.Distribution(scoring.Rules{To: 11, WinBy: 2}, 0.44, 0.44); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRounds(b *testing.B) {
	clock, err := pace.NewClock(14)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		clock.Rounds(pace.Hall{Courts: 6, Change: 3, Left: 150}, 0.8)
	}
}
