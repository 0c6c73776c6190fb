package session

import (
	"testing"

	"club/quadrille/scoring"
)

// longLog is a log of at least so many records: nights of 24 people scored rally by rally.
func longLog(b testing.TB, records int) *MemoryLog {
	b.Helper()
	d, log, clock := newTestDesk(b)
	for int(log.Last()) < records {
		must(b, d, OpenNight{Settings: DefaultSettings(uint64(log.Last())), Courts: 2})
		people := d.Ledger().Club().People
		if len(people) == 0 {
			for _, name := range []string{"A", "B", "C", "D", "E", "F", "G", "H", "I", "J"} {
				must(b, d, AddGuest{Name: name})
			}
		}
		for _, p := range people {
			must(b, d, CheckIn{p.ID})
		}
		for range 4 {
			must(b, d, CallRound{})
			for _, g := range d.Ledger().Night().Running() {
				for i := 0; d.Ledger().Night().Game(g.ID).Running(); i++ {
					must(b, d, ScoreRally{Game: g.ID, Rally: scoring.Rally{Won: scoring.Team(i / 3 % 2)}})
				}
			}
			clock.now = clock.now.Add(15 * 60e9)
		}
		must(b, d, EndNight{})
	}
	return log
}

func BenchmarkLoad10000Records(b *testing.B) {
	log := longLog(b, 10_000)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Load(log.Records(1)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkOneAction(b *testing.B) {
	d, _, _ := newTestDesk(b)
	withPeople(b, d, 4, 18, Rounds)
	must(b, d, CallRound{})
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		if i%2 == 0 {
			must(b, d, ScoreRally{Game: 1, Rally: scoring.Rally{Won: scoring.A}})
		} else {
			must(b, d, UndoRally{1})
		}
		if i%100 == 99 { // keep the night as long as a night is
			b.StopTimer()
			d, _, _ = newTestDesk(b)
			withPeople(b, d, 4, 18, Rounds)
			must(b, d, CallRound{})
			b.StartTimer()
		}
	}
}
