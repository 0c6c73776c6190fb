package session

import (
	"testing"

	"club/quadrille/scoring"
)

// BenchmarkSheet folds one game of 60 rallies: plain is the usual log of rallies, noted has a time-out
// before the first, after which every rally goes through the sheet.
func BenchmarkSheet(b *testing.B) {
	start := playing(b).Night().Games[0]
	start.Rallies, start.State = nil, scoring.Start(start.Rules, scoring.A)
	for _, c := range []struct {
		name  string
		first scoring.Entry
	}{
		{"plain", scoring.Entry{Kind: scoring.RallyWon}},
		{"noted", scoring.Entry{Kind: scoring.TimeOut}},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				g := start
				if err := g.note(c.first, evening); err != nil {
					b.Fatal(err)
				}
				for i := range 60 { // the serve goes round, so that nobody scores
					won := scoring.B
					if i%4 >= 2 {
						won = scoring.A
					}
					if err := g.note(scoring.Entry{Kind: scoring.RallyWon, Rally: scoring.Rally{Won: won}}, evening); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
}
