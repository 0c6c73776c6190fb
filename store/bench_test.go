package store

import (
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"
)

// BenchmarkAppendAction appends actions and, in turn with them, puts the same bytes into a bare
// bbolt file that is opened in the same way in the same folder. Taking turns keeps the noise of a
// shared disk out of the comparison: x-bare is how many times a bare transaction an append takes,
// by the medians of both.
func BenchmarkAppendAction(b *testing.B) {
	s := mustOpen(b, filepath.Join(b.TempDir(), "club.qdb"))
	bare := bareFile(b)
	var ours, theirs []time.Duration
	for b.Loop() {
		recs := actionAt(s.Last() + 1)
		entries, _, err := follow(s.head.seed(), s.Last(), s.sum, recs)
		if err != nil {
			b.Fatal(err)
		}
		ours = append(ours, timed(b, func() error { return s.Append(recs) }))
		theirs = append(theirs, timed(b, func() error { return commit(bare, entries) }))
	}
	b.ReportMetric(float64(median(ours).Microseconds()), "append-µs")
	b.ReportMetric(float64(median(theirs).Microseconds()), "bare-µs")
	b.ReportMetric(float64(median(ours))/float64(median(theirs)), "x-bare")
}

func bareFile(b *testing.B) *bolt.DB {
	b.Helper()
	path := filepath.Join(b.TempDir(), "bare.db")
	if err := initialise(path, newHead("")); err != nil {
		b.Fatal(err)
	}
	db, err := bolt.Open(path, 0o600, boltOptions())
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { db.Close() })
	return db
}

func timed(b *testing.B, work func() error) time.Duration {
	b.Helper()
	began := time.Now()
	if err := work(); err != nil {
		b.Fatal(err)
	}
	return time.Since(began)
}

func median(d []time.Duration) time.Duration {
	return slices.Sorted(slices.Values(d))[len(d)/2]
}

func BenchmarkOpen(b *testing.B) {
	for _, n := range []int{1_000, 10_000, 25_000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			path := seasonFile(b, n)
			b.ReportAllocs()
			for b.Loop() {
				s, err := Open(path)
				if err != nil {
					b.Fatal(err)
				}
				s.Close()
			}
		})
	}
}

func BenchmarkOpenAndReadAll(b *testing.B) {
	path := seasonFile(b, 25_000)
	b.ReportAllocs()
	for b.Loop() {
		s, err := Open(path)
		if err != nil {
			b.Fatal(err)
		}
		for _, err := range s.Records(1) {
			if err != nil {
				b.Fatal(err)
			}
		}
		s.Close()
	}
}

func BenchmarkLook(b *testing.B) {
	path := seasonFile(b, 25_000)
	for b.Loop() {
		if _, err := Look(path); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBackup(b *testing.B) {
	path := seasonFile(b, 25_000)
	n := 0
	for b.Loop() {
		n++
		if _, err := Backup(path, path+strconv.Itoa(n)); err != nil {
			b.Fatal(err)
		}
	}
}

// seasonFile makes a file as it grows in life, action by action but without waiting for each.
func seasonFile(tb testing.TB, n int) string {
	tb.Helper()
	path := filepath.Join(tb.TempDir(), "club.qdb")
	s := mustOpen(tb, path)
	s.db.NoSync = true
	appendActions(tb, s, season(n))
	s.db.NoSync = false
	if err := s.db.Sync(); err != nil {
		tb.Fatal(err)
	}
	if err := s.Close(); err != nil {
		tb.Fatal(err)
	}
	return path
}

func TestSeasonOpensInLittleMemory(t *testing.T) {
	const most = 40 << 20
	path := seasonFile(t, 25_000)
	runtime.GC()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	s := mustOpen(t, path)
	recs := allOf(t, s)
	runtime.GC()
	runtime.ReadMemStats(&after)
	if grown := int64(after.HeapAlloc) - int64(before.HeapAlloc); grown > most {
		t.Errorf("%d records take %d KiB", len(recs), grown>>10)
	}
	s.Close()
	r := mustBeSound(t, path)
	if perRecord := r.Bytes / int64(r.Records); perRecord > 400 {
		t.Errorf("a record takes %d bytes in the file", perRecord)
	}
	t.Log(r)
	runtime.KeepAlive(recs)
}
