package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"os"
	"path/filepath"
	"strings"
	"testing"

	bolt "go.etcd.io/bbolt"

	"club/quadrille/session"
)

// withSnapshot makes a closed file of some records with a snapshot of the first 20.
func withSnapshot(t *testing.T, state string) (path string, recs []session.Record) {
	t.Helper()
	path, recs = nightFile(t, 40)
	s := mustOpen(t, path)
	if err := errors.Join(s.KeepSnapshot(session.Snapshot{Seq: 20, State: []byte(state)}), s.Close()); err != nil {
		t.Fatal(err)
	}
	return path, recs
}

// Whatever is wrong with a snapshot, the records open and the snapshot is not used; a look tells what
// is wrong.
func TestASnapshotThatIsNoGoodIsNotUsed(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(value []byte) []byte
		want   string
	}{
		{"altered", func(v []byte) []byte { v[20] ^= 1; return v }, "its bytes are not what was written"},
		{"cut short", func(v []byte) []byte { return v[:3] }, "its bytes are not what was written"},
		{"of a newer layout", func(v []byte) []byte { v[0] = 2; return resealSnapshot(v) }, "laid out in a newer way"},
		{"of other events", func(v []byte) []byte { v[9] ^= 1; return resealSnapshot(v) }, "it is of other events"},
		{"of events to come", func(v []byte) []byte { v[1] = 1; return resealSnapshot(v) }, "it is of other events"},
		{"of no events", func(v []byte) []byte { v[8] = 0; return resealSnapshot(v) }, "it is of other events"},
	} {
		t.Run(c.name, func(t *testing.T) {
			path, recs := withSnapshot(t, "the state")
			edit(t, path, func(tx *bolt.Tx) error {
				b := tx.Bucket(snapshotBucket)
				return b.Put(snapshotKey, c.change(bytes.Clone(b.Get(snapshotKey))))
			})
			s := mustOpen(t, path)
			sameRecords(t, allOf(t, s), recs)
			if kept, ok := s.Snapshot(); ok {
				t.Errorf("the store gives a snapshot of %d records", kept.Seq)
			}
			v, err := Look(path)
			if err != nil {
				t.Fatal(err)
			}
			if kept, ok := v.Snapshot(); ok {
				t.Errorf("the view gives a snapshot of %d records", kept.Seq)
			}
			if _, ok, err := v.CheckSnapshot(); ok || err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("a check says %v, want %q", err, c.want)
			}
		})
	}
}

// resealSnapshot puts the right checksum behind bytes that were changed.
func resealSnapshot(value []byte) []byte { return sealed(value[:len(value)-sumSize]) }

func TestWhatIsForgottenIsForgottenInTheSnapshotToo(t *testing.T) {
	path, recs := withSnapshot(t, `{"name":"Ada Quill"}`)
	data, err := os.ReadFile(path)
	if err != nil || !bytes.Contains(data, []byte("Ada Quill")) {
		t.Fatalf("the snapshot is not in the file (%v)", err)
	}
	s := mustOpen(t, path)
	if err := s.Rewrite(func(r session.Record) session.Record { return r }); err != nil {
		t.Fatal(err)
	}
	if _, ok := s.Snapshot(); ok {
		t.Error("the snapshot outlived what it was made from")
	}
	sameRecords(t, allOf(t, s), recs)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if data, err = os.ReadFile(path); err != nil || bytes.Contains(data, []byte("Ada Quill")) {
		t.Errorf("the name is still in the file (%v)", err)
	}
}

func TestARescueLeavesTheSnapshotBehind(t *testing.T) {
	path, recs := withSnapshot(t, "the state")
	to := path + ".rescued"
	if _, err := Rescue(path, to); err != nil {
		t.Fatal(err)
	}
	v, err := Look(to)
	if err != nil {
		t.Fatal(err)
	}
	sameRecords(t, allOf(t, v), recs)
	if _, ok, err := v.CheckSnapshot(); ok || err != nil {
		t.Errorf("the rescued file has a snapshot: %v, %v", ok, err)
	}
	if err := v.KeepSnapshot(session.Snapshot{Seq: 1}); !errors.Is(err, ErrReadOnly) {
		t.Errorf("a view keeps a snapshot: %v", err)
	}
}

func TestTooLargeASnapshotIsNotKept(t *testing.T) {
	path, _ := withSnapshot(t, "the state")
	s := mustOpen(t, path)
	if err := s.KeepSnapshot(session.Snapshot{Seq: 30, State: make([]byte, MaxSnapshot+1)}); err != nil {
		t.Fatal(err)
	}
	if kept, ok := s.Snapshot(); !ok || kept.Seq != 20 {
		t.Errorf("the store has a snapshot of %d records, %v", kept.Seq, ok)
	}
	if err := errors.Join(s.Close(), s.Close()); err != nil {
		t.Fatal(err)
	}
	if err := s.KeepSnapshot(session.Snapshot{Seq: 30}); !errors.Is(err, ErrClosed) {
		t.Errorf("a closed store says %v", err)
	}
	if _, ok := s.Snapshot(); ok {
		t.Error("a closed store gives a snapshot")
	}
}

// FuzzSnapshot feeds values that no Quadrille wrote, with the right checksum behind them.
func FuzzSnapshot(f *testing.F) {
	f.Add(snapshot{session.Snapshot{Seq: 7, State: []byte("{}")}, 1}.encode())
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, value []byte) {
		for _, v := range [][]byte{value, sealed(value)} {
			s, err := decodeSnapshot(v)
			if err == nil && !bytes.Equal(s.encode(), v) {
				t.Fatalf("%x reads as %+v", v, s)
			}
		}
	})
}

// sealed puts the right checksum behind bytes.
func sealed(body []byte) []byte {
	return binary.BigEndian.AppendUint32(bytes.Clone(body), crc32.Checksum(body, castagnoli))
}

// TestASnapshotThatIsNotKeptMakesTheStoreUnsure, and it looks again.
func TestASnapshotThatIsNotKeptMakesTheStoreUnsure(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	appendActions(t, s, season(20))
	last := s.Last()
	for _, seq := range []uint64{0, last + 1} {
		if err := s.KeepSnapshot(session.Snapshot{Seq: seq, State: []byte("x")}); !errors.Is(err, session.ErrOutOfStep) {
			t.Errorf("of event %d: %v", seq, err)
		}
	}
	s.file.Close() // what a disk that was pulled out looks like
	var file *FileError
	if err := s.KeepSnapshot(session.Snapshot{Seq: last, State: []byte("x")}); !errors.As(err, &file) || !s.unsure {
		t.Errorf("%v, unsure %t", err, s.unsure)
	}
	if err := s.Reopen(); err != nil {
		t.Fatal(err)
	}
	if err := s.KeepSnapshot(session.Snapshot{Seq: last, State: []byte("x")}); err != nil {
		t.Error(err)
	}
	if kept, ok := s.Snapshot(); !ok || kept.Seq != last {
		t.Errorf("kept is %+v", kept)
	}
}

// TestASnapshotThatIsCutShortIsNone, wherever it is cut, and the whole one is what was kept.
func TestASnapshotThatIsCutShortIsNone(t *testing.T) {
	for _, state := range []string{"", "x", "the state"} {
		kept := snapshot{session.Snapshot{Seq: 7, State: []byte(state)}, 99}
		whole := kept.encode()
		for n := range len(whole) {
			if s, err := decodeSnapshot(whole[:n]); err == nil {
				t.Errorf("of %d bytes of %d: %+v", n, len(whole), s)
			}
		}
		if got, err := decodeSnapshot(whole); err != nil || got.Seq != 7 || string(got.State) != state || got.sum != 99 {
			t.Errorf("%q: %+v, %v", state, got, err)
		}
	}
}
