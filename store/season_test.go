package store

import (
	"errors"
	"fmt"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

// A season: so many nights of so many records.
const (
	seasonNights = 50
	nightRecords = 500
)

// playSeason plays nights of 20 people on 4 courts, scored rally by rally, until each night has at
// least so many records, and gives the log.
func playSeason(tb testing.TB, nights, records int) *session.MemoryLog {
	tb.Helper()
	return playNights(tb, nights, records, 20, 20, 4)
}

// playNights plays nights of which each has some of the people of a club, in turn, on some courts.
func playNights(tb testing.TB, nights, records, people, attend, courts int) *session.MemoryLog {
	tb.Helper()
	log := &session.MemoryLog{}
	now, ids := time.Date(2026, 1, 8, 19, 0, 0, 0, time.UTC), 0
	desk, err := session.NewDesk(log, func() time.Time { return now }, func() session.PersonID {
		ids++
		return session.PersonID(fmt.Sprintf("01JZ8Q%020d", ids)) // as long as real identities
	})
	if err != nil {
		tb.Fatal(err)
	}
	do := func(c session.Command) {
		if _, err := desk.Do(c); err != nil {
			tb.Fatalf("%T: %v", c, err)
		}
	}
	for n := range nights {
		first := log.Last()
		settings := session.DefaultSettings(uint64(n))
		settings.Flow = session.Rolling
		do(session.OpenNight{Name: fmt.Sprintf("Night %d", n+1), Settings: settings, Courts: courts})
		for i := range attend {
			at := (n*attend + i) % people
			if known := desk.Ledger().Club().People; at < len(known) {
				do(session.CheckIn{Person: known[at].ID})
				continue
			}
			do(session.AddGuest{Name: fmt.Sprintf("Person %02d", at+1), Level: 3})
		}
		do(session.BeginPlay{})
		for i := 0; log.Last()-first < uint64(records); i++ {
			now = now.Add(5 * time.Second)
			g := desk.Ledger().Night().Running()[i%courts]
			do(session.ScoreRally{Game: g.ID, Rally: scoring.Rally{Won: scoring.Team(i / courts * 7 % 13 % 2)}})
		}
		settings.Flow = session.Rounds // a court that gets free stays free from now on
		do(session.ChangeSettings{Settings: settings})
		for _, g := range desk.Ledger().Night().Running() {
			final, err := g.Rules.Final(11, 7, scoring.Played)
			if err != nil {
				tb.Fatal(err)
			}
			do(session.FinishGame{Game: g.ID, Final: final})
		}
		do(session.EndNight{})
		now = now.Add(7 * 24 * time.Hour)
	}
	return log
}

// fileOf writes a log to a new club file, action by action, without waiting for the disk after
// each.
func fileOf(tb testing.TB, log session.Log) string {
	tb.Helper()
	path := filepath.Join(tb.TempDir(), "club.qdb")
	s := mustOpen(tb, path)
	s.db.NoSync = true
	appendActions(tb, s, allOf(tb, log))
	s.db.NoSync = false
	if err := errors.Join(s.db.Sync(), s.Close()); err != nil {
		tb.Fatal(err)
	}
	return path
}

// keepSnapshot keeps a snapshot of a file's log in it.
func keepSnapshot(tb testing.TB, path string) {
	tb.Helper()
	s := mustOpen(tb, path)
	l, err := session.Load(s.Records(1))
	if err != nil {
		tb.Fatal(err)
	}
	made, ok, err := l.Snapshot()
	if err != nil || !ok {
		tb.Fatalf("no snapshot: %v", err)
	}
	if err := errors.Join(s.KeepSnapshot(made), s.Close()); err != nil {
		tb.Fatal(err)
	}
}

// openDesk opens a club file as the desk does: every byte verified, every record folded.
func openDesk(tb testing.TB, path string) (*Store, *session.Ledger) {
	tb.Helper()
	s, err := Open(path)
	if err != nil {
		tb.Fatal(err)
	}
	l, err := session.Open(s)
	if err != nil {
		tb.Fatal(err)
	}
	return s, l
}

// BenchmarkOpenSeason is the time from the name of a file to a desk that takes commands, and the
// memory that this needs at most. The target for a season is 150 ms and 40 MiB.
func BenchmarkOpenSeason(b *testing.B) {
	benchmarkOpen(b, playSeason(b, seasonNights, nightRecords))
}

// BenchmarkOpenYear is the same of a large club: a hundred nights of 40 of its 300 people on eight courts. The target is
// 300 ms.
func BenchmarkOpenYear(b *testing.B) {
	const nights, people, attend, courts = 100, 300, 40, 8
	benchmarkOpen(b, playNights(b, nights, nightRecords, people, attend, courts))
}

func benchmarkOpen(b *testing.B, log *session.MemoryLog) {
	path := fileOf(b, log)
	open := func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			s, l := openDesk(b, path)
			b.ReportMetric(float64(l.Last()), "records")
			if err := s.Close(); err != nil {
				b.Fatal(err)
			}
		}
	}
	b.Run("records", open)
	keepSnapshot(b, path)
	b.Run("snapshot", open)
}

// BenchmarkKeepSnapshot is what a snapshot of a season costs, once a night and beside the desk.
func BenchmarkKeepSnapshot(b *testing.B) {
	path := fileOf(b, playSeason(b, seasonNights, nightRecords))
	for b.Loop() {
		keepSnapshot(b, path)
	}
}

// heap is how many bytes are in use after all garbage is gone.
func heap() int64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&m)
	return int64(m.HeapAlloc)
}

// A season opens in 40 MiB, from its records and from a snapshot; the file
// grows in step with the records.
func TestASeasonOpensInLittleMemoryAndGrowsEvenly(t *testing.T) {
	const most = 40 << 20
	season := playSeason(t, seasonNights, nightRecords)
	half, whole := fileOf(t, playSeason(t, seasonNights/2, nightRecords)), fileOf(t, season)
	for _, snapshot := range []bool{false, true} {
		if snapshot {
			keepSnapshot(t, whole)
		}
		before := heap()
		s, l := openDesk(t, whole)
		if grown := heap() - before; grown > most || l.Last() != season.Last() {
			t.Errorf("a desk of %d records takes %d KiB (snapshot: %v)", l.Last(), grown>>10, snapshot)
		}
		if _, ok := s.Snapshot(); ok != snapshot {
			t.Errorf("there is a snapshot: %v, want %v", ok, snapshot)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
	a, b := mustBeSound(t, half), mustBeSound(t, whole)
	per, perHalf := float64(b.Bytes)/float64(b.Records), float64(a.Bytes)/float64(a.Records)
	if per > 1.5*perHalf {
		t.Errorf("a record takes %.0f bytes of a season and %.0f of half of one", per, perHalf)
	}
	t.Log(a, b)
}
