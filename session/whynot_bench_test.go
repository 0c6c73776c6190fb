package session

import (
	"testing"
	"time"
)

// BenchmarkWhyNot asks why the last of 160 on the bench is not called, after 80 games.
func BenchmarkWhyNot(b *testing.B) {
	d, _, clock := newTestDesk(b)
	withPeople(b, d, 10, 200, Rolling)
	must(b, d, BeginPlay{})
	for range 80 {
		clock.now = clock.now.Add(time.Minute)
		score(b, d, clock, 1)
	}
	bench := d.Ledger().Night().Bench()
	for b.Loop() {
		if _, err := d.Ledger().WhyNot(bench[len(bench)-1].Person, clock.now); err != nil {
			b.Fatal(err)
		}
	}
}
