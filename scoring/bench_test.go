package scoring_test

import (
	"testing"

	"club/quadrille/scoring"
)

// manyRallies is n rallies that either team wins as often, in an irregular order.
func manyRallies(n int) []scoring.Rally {
	rallies := make([]scoring.Rally, n)
	for i := range rallies {
		// A multiplicative hash: an order that no branch predictor learns by heart.
		rallies[i].Won = scoring.Team(uint32(i) * 2654435761 >> 31)
	}
	return rallies
}

// BenchmarkFold folds games of all scorings; the figure that counts is rallies/s, with no allocation.
func BenchmarkFold(b *testing.B) {
	for _, r := range []scoring.Rules{
		{To: 11, WinBy: 2},
		{Scoring: scoring.RallyScoring, To: 21, WinBy: 2, WinOnServe: true},
		{Singles: true, To: 15, WinBy: 2},
	} {
		b.Run(r.String(), func(b *testing.B) {
			rallies := manyRallies(1 << 16)
			played, at := 0, 0
			b.ReportAllocs()
			for b.Loop() {
				s := scoring.Fold(r, scoring.A, rallies[at:at+200])
				played += s.Rally
				at = (at + 200) % (len(rallies) - 200)
			}
			b.ReportMetric(float64(played)/b.Elapsed().Seconds(), "rallies/s")
		})
	}
}

// BenchmarkAfter plays rally by rally, each state a new value, as the desk does.
func BenchmarkAfter(b *testing.B) {
	rallies := manyRallies(1 << 16)
	r := scoring.Rules{To: 11, WinBy: 2}
	s, i := scoring.Start(r, scoring.A), 0
	b.ReportAllocs()
	for b.Loop() {
		if s = s.After(rallies[i&(1<<16-1)]); s.Done {
			s = scoring.Start(r, scoring.A)
		}
		i++
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "rallies/s")
}

func TestFoldingAllocatesNothing(t *testing.T) {
	rallies := manyRallies(200)
	r := scoring.Rules{To: 11, WinBy: 2}
	var s scoring.State
	allocs := testing.AllocsPerRun(100, func() {
		s = scoring.Fold(r, scoring.A, rallies).After(scoring.Rally{})
	})
	if allocs != 0 || !s.Done {
		t.Errorf("folding a game makes %v allocations, done %v", allocs, s.Done)
	}
}
