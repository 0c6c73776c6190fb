package store

import (
	"bytes"
	"errors"
	"hash/crc32"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"club/quadrille/session"
)

func TestDefaultPathIsInTheDataFolder(t *testing.T) {
	path, err := DefaultPath()
	if err != nil || !filepath.IsAbs(path) || filepath.Base(path) != "club.qdb" || filepath.Base(filepath.Dir(path)) != "quadrille" {
		t.Fatal(path, err)
	}
}

func TestNewFileIsForItsOwnerAlone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "data", "quadrille", "club.qdb")
	before := time.Now().Truncate(time.Millisecond)
	s := mustOpen(t, path, CreatedBy("1.2.3"))
	after := time.Now()
	appendActions(t, s, season(50))
	for name, want := range map[string]os.FileMode{
		path: 0o600, holderPath(path): 0o600,
		filepath.Dir(path): 0o700 | os.ModeDir, filepath.Dir(filepath.Dir(path)): 0o700 | os.ModeDir,
	} {
		info, err := os.Stat(name)
		if err != nil || info.Mode() != want {
			t.Errorf("%s has mode %v, want %v (%v)", name, info.Mode(), want, err)
		}
	}
	h := s.Head()
	if h.Schema != Schema || h.CreatedBy != "1.2.3" || h.Created.Before(before) || h.Created.After(after) || h.UUID[6]>>4 != 4 || s.UUID() != h.UUID {
		t.Errorf("the head is %+v", h)
	}
	if len(h.UUID.String()) != 36 {
		t.Errorf("the identity reads %s", h.UUID)
	}
	if s.Path() != path || len(s.Notes()) > 0 {
		t.Error(s.Path(), s.Notes())
	}
}

func TestHeadReadsBackAsWritten(t *testing.T) {
	for _, by := range []string{"", "1.2.3", strings.Repeat("long ", 40)} {
		h := newHead(by)
		if got, err := decodeHead(h.encode()); err != nil || got != h {
			t.Errorf("%+v, %v, want %+v", got, err, h)
		}
	}
}

// edit changes a closed file through bbolt itself.
func edit(t *testing.T, path string, change func(*bolt.Tx) error) {
	t.Helper()
	db, err := bolt.Open(path, 0o600, boltOptions())
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if err := db.Update(change); err != nil {
		t.Fatal(err)
	}
}

// reseal puts the right checksum behind bytes that were changed.
func reseal(key, value []byte) []byte {
	body := value[:len(value)-sumSize]
	sum := crc32.Update(crc32.Checksum(key, castagnoli), castagnoli, body)
	return append(bytes.Clone(body), byte(sum>>24), byte(sum>>16), byte(sum>>8), byte(sum))
}

func TestWhatIsWrongWithAFileIsTold(t *testing.T) {
	put := func(seq uint64, change func([]byte) []byte) func(*bolt.Tx) error {
		return func(tx *bolt.Tx) error {
			b := tx.Bucket(logBucket)
			return b.Put(seqKey(seq), change(bytes.Clone(b.Get(seqKey(seq)))))
		}
	}
	for _, c := range []struct {
		name   string
		change func(*bolt.Tx) error
		want   string
	}{
		{"altered", put(7, func(v []byte) []byte { v[40] ^= 1; return v }), "event 7 is damaged"},
		{"replaced", put(7, func(v []byte) []byte { v[40] ^= 1; return reseal(seqKey(7), v) }), "event 8 does not follow the event 7 that is there"},
		{"removed", func(tx *bolt.Tx) error { return tx.Bucket(logBucket).Delete(seqKey(9)) }, "event 9 is missing"},
		{"no beginning", func(tx *bolt.Tx) error {
			return errors.Join(tx.Bucket(logBucket).Delete(seqKey(1)), tx.Bucket(logBucket).Delete(seqKey(2)))
		}, "events 1 to 2 are missing"},
		{"half an action", func(tx *bolt.Tx) error {
			k, _ := tx.Bucket(logBucket).Cursor().Last()
			return tx.Bucket(logBucket).Delete(k)
		}, "missing"},
		{"swapped", func(tx *bolt.Tx) error {
			b := tx.Bucket(logBucket)
			four, five := bytes.Clone(b.Get(seqKey(4))), bytes.Clone(b.Get(seqKey(5)))
			return errors.Join(b.Put(seqKey(4), five), b.Put(seqKey(5), four))
		}, "event 4 is damaged"},
		{"head", func(tx *bolt.Tx) error { return tx.Bucket(metaBucket).Put(headKey, []byte("?")) }, "the head of the file is damaged"},
		{"other head", func(tx *bolt.Tx) error { return tx.Bucket(metaBucket).Put(headKey, newHead("").encode()) }, "event 1 belongs to another file"},
		{"newer event", put(7, func(v []byte) []byte { v[0] = 3; return reseal(seqKey(7), v) }), "was written by a newer Quadrille (event layout 3, this one knows 2)"},
		{"newer schema", func(tx *bolt.Tx) error {
			h := newHead("")
			h.Schema = 3
			return tx.Bucket(metaBucket).Put(headKey, h.encode())
		}, "was written by a newer Quadrille (file format 3, this one knows 1)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "club.qdb")
			s := mustOpen(t, path)
			// The last append holds two records, so that half of it can go.
			recs := season(30)
			appendActions(t, s, recs)
			if err := s.Append(append(actionAt(uint64(len(recs)) + 1)[:1:1], actionAt(uint64(len(recs)) + 2)[:1]...)); err != nil {
				t.Fatal(err)
			}
			s.Close()
			edit(t, path, c.change)
			if _, err := Open(path); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("open says %v, want %q", err, c.want)
			}
			if _, err := Look(path); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("look says %v, want %q", err, c.want)
			}
			if _, err := Backup(path, path+".copy"); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("backup says %v, want %q", err, c.want)
			}
		})
	}
}

func TestForeignFilesAreLeftAlone(t *testing.T) {
	dir := t.TempDir()
	other := filepath.Join(dir, "other.db")
	db, err := bolt.Open(other, 0o600, boltOptions())
	if err != nil {
		t.Fatal(err)
	}
	db.Close()
	files := map[string][]byte{
		"empty": {}, "text": []byte("name,group\nAda,A\n"), "zeros": make([]byte, 70000), "short": {1},
	}
	for name, data := range files {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"empty", "text", "zeros", "short", "other.db"} {
		path := filepath.Join(dir, name)
		before, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		var foreign *NotOursError
		if _, err := Open(path); !errors.As(err, &foreign) {
			t.Errorf("%s: open says %v", name, err)
		}
		if _, err := Check(path); !errors.As(err, &foreign) {
			t.Errorf("%s: check says %v", name, err)
		}
		if _, err := Rescue(path, path+".new"); !errors.As(err, &foreign) {
			t.Errorf("%s: rescue says %v", name, err)
		}
		if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) {
			t.Errorf("%s was changed (%v)", name, err)
		}
	}
}

func TestWhatTheSystemRefusesIsToldWithTheWayOut(t *testing.T) {
	dir := t.TempDir()
	gone := filepath.Join(dir, "gone.qdb")
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for name, call := range map[string]func() error{
		"look":        func() error { _, err := Look(gone); return err },
		"check":       func() error { _, err := Check(gone); return err },
		"backup":      func() error { _, err := Backup(gone, gone+".copy"); return err },
		"rescue":      func() error { _, err := Rescue(gone, gone+".new"); return err },
		"open inside": func() error { _, err := Open(filepath.Join(file, "club.qdb")); return err },
	} {
		var refused *FileError
		if err := call(); !errors.As(err, &refused) {
			t.Errorf("%s says %v", name, err)
		}
	}
	if _, err := os.Lstat(gone); err == nil {
		t.Error("a file was made that nobody asked for")
	}
}

func TestReadOnlyFileIsToldAsSuch(t *testing.T) {
	if os.Getuid() == 0 {
		t.Skip("the superuser may write anything")
	}
	path, recs := nightFile(t, 10)
	if err := os.Chmod(path, 0o400); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(path); err == nil || !strings.Contains(err.Error(), "permission denied: make") {
		t.Errorf("open says %v", err)
	}
	v, err := Look(path)
	if err != nil {
		t.Fatal(err)
	}
	sameRecords(t, allOf(t, v), recs)
}

func TestClosedStoreSaysSo(t *testing.T) {
	s := mustOpen(t, filepath.Join(t.TempDir(), "club.qdb"))
	for range 2 {
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Append(actionAt(1)); !errors.Is(err, ErrClosed) {
		t.Errorf("append says %v", err)
	}
	if err := s.Compact(); !errors.Is(err, ErrClosed) {
		t.Errorf("compact says %v", err)
	}
	for _, err := range s.Records(1) {
		if !errors.Is(err, ErrClosed) {
			t.Errorf("records say %v", err)
		}
	}
}

func TestAppendMayHappenWhileRecordsAreRead(t *testing.T) {
	s := mustOpen(t, filepath.Join(t.TempDir(), "club.qdb"))
	recs := season(1500)
	if err := s.Append(recs); err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, err := range s.Records(1) {
		if err != nil {
			t.Fatal(err)
		}
		if n++; n%100 == 0 {
			if err := s.Append(actionAt(s.Last() + 1)); err != nil {
				t.Fatal(err)
			}
		}
	}
	if n != len(recs) {
		t.Errorf("%d records were given, %d were there at the call", n, len(recs))
	}
}

func TestTooLargeARecordIsRefusedAndForgotten(t *testing.T) {
	s := mustOpen(t, filepath.Join(t.TempDir(), "club.qdb"))
	big := session.Record{Seq: 1, Action: 1, Kind: "Big", Payload: make([]byte, MaxPayload+1)}
	if err := s.Append([]session.Record{big}); err == nil {
		t.Fatal("it was taken")
	}
	big.Payload = big.Payload[:MaxPayload]
	if err := s.Append([]session.Record{big}); err != nil {
		t.Fatal(err)
	}
	s.Close()
	mustBeSound(t, s.Path())
	if got := allOf(t, mustOpen(t, s.Path())); len(got) != 1 || len(got[0].Payload) != MaxPayload {
		t.Fatalf("%d records", len(got))
	}
}

func TestNobodyTurnedTheFlushOff(t *testing.T) {
	s := mustOpen(t, filepath.Join(t.TempDir(), "club.qdb"))
	if s.db.NoSync || s.db.NoGrowSync || s.db.NoFreelistSync {
		t.Error("what was acknowledged may not be on disk")
	}
}
