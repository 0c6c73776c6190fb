package store

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"club/quadrille/session"
)

// actionAt is an action whose first record is number seq. Everything about it follows from seq, so
// that a process can tell what another one, killed since, must have written.
func actionAt(seq uint64) []session.Record {
	r := rand.New(rand.NewPCG(seq, 1))
	recs := make([]session.Record, 1+r.IntN(4))
	for i := range recs {
		recs[i] = session.Record{
			Seq: seq + uint64(i), Action: seq,
			Time:    time.UnixMilli(1_790_000_000_000 + int64(seq)*2500).UTC(),
			Night:   session.NightID(seq / 500),
			Kind:    []string{"PersonArrived", "RallyWon", "GameFinished"}[r.IntN(3)],
			Version: 1,
			Payload: json.RawMessage(fmt.Sprintf(`{"seq":%d,"note":"%x"}`, seq+uint64(i), make([]byte, r.IntN(120)))),
		}
	}
	return recs
}

// season gives whole actions, at least n records.
func season(n int) []session.Record {
	var out []session.Record
	for len(out) < n {
		out = append(out, actionAt(uint64(len(out))+1)...)
	}
	return out
}

// mustOpen opens a file that is closed when the test ends.
func mustOpen(tb testing.TB, path string, opts ...Option) *Store {
	tb.Helper()
	s, err := Open(path, opts...)
	if err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() { s.Close() })
	return s
}

// appendActions appends recs, each action in a transaction of its own.
func appendActions(tb testing.TB, s *Store, recs []session.Record) {
	tb.Helper()
	for len(recs) > 0 {
		n := 1
		for n < len(recs) && recs[n].Action == recs[0].Action {
			n++
		}
		if err := s.Append(recs[:n]); err != nil {
			tb.Fatal(err)
		}
		recs = recs[n:]
	}
}

// nightFile makes a closed file of at least n records, appended action by action.
func nightFile(tb testing.TB, n int) (path string, recs []session.Record) {
	tb.Helper()
	path = filepath.Join(tb.TempDir(), "club.qdb")
	recs = season(n)
	s := mustOpen(tb, path)
	appendActions(tb, s, recs)
	if err := s.Close(); err != nil {
		tb.Fatal(err)
	}
	return path, recs
}

// allOf reads a log to its end.
func allOf(tb testing.TB, l session.Log) []session.Record {
	tb.Helper()
	var out []session.Record
	for r, err := range l.Records(1) {
		if err != nil {
			tb.Fatal(err)
		}
		out = append(out, r)
	}
	return out
}

// sameRecords fails unless a log holds exactly want.
func sameRecords(tb testing.TB, got, want []session.Record) {
	tb.Helper()
	if len(got) != len(want) {
		tb.Fatalf("%d records, want %d", len(got), len(want))
	}
	for i := range got {
		if !reflect.DeepEqual(got[i], want[i]) {
			tb.Fatalf("record %d is\n%+v, want\n%+v", i+1, got[i], want[i])
		}
	}
}

// mustBeSound checks a file in every way there is.
func mustBeSound(tb testing.TB, path string) Report {
	tb.Helper()
	r, err := Check(path)
	if err != nil {
		tb.Fatal(err)
	}
	if !r.Sound() || len(r.Notes) > 0 {
		tb.Fatalf("%s", r)
	}
	return r
}

// long tells whether the sweeps run in full, which takes minutes: set QUADRILLE_LONG=1.
func long() bool { return os.Getenv("QUADRILLE_LONG") != "" }

// atLength is how often a sweep repeats.
func atLength(short, full int) int {
	if long() {
		return full
	}
	return short
}
