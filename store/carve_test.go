package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"club/quadrille/session"
)

// TestCarveFindsTheRecordsAtTheSeamsOfWhatItReads: records lie close together over more than is read at once.
func TestCarveFindsTheRecordsAtTheSeamsOfWhatItReads(t *testing.T) {
	var file []byte
	var wrote int
	for len(file) < 17<<20 {
		wrote++
		f := frame{Record: session.Record{Seq: uint64(wrote), Action: 1, Kind: "long", Payload: bytes.Repeat([]byte{byte(wrote)}, 3000)}}
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		if wrote%5 == 0 { // what only looks like a record comes before some
			spoilt := bytes.Clone(value)
			spoilt[len(spoilt)-1] ^= 1
			file = append(append(file, key...), spoilt...)
		}
		file = append(append(append(file, key...), value...), byte(wrote%7))
	}
	found := uint64(0)
	err := carve(bytes.NewReader(file), int64(len(file)), func(f frame) {
		if f.Seq != found+1 {
			t.Fatalf("event %d was found behind event %d", f.Seq, found)
		}
		found = f.Seq
	})
	if err != nil || found != uint64(wrote) {
		t.Errorf("%d of %d events were found: %v", found, wrote, err)
	}
}

// TestAFileWithoutHeadersIsKnownByItsHead: it is damaged and not somebody else's, also where something that only
// looks like a head comes first; without its head nothing tells that it was ours.
func TestAFileWithoutHeadersIsKnownByItsHead(t *testing.T) {
	path, _ := nightFile(t, 20)
	sound, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	page := os.Getpagesize()
	for _, c := range []struct {
		name   string
		change func(data []byte)
		ours   bool
	}{
		{"no headers", func([]byte) {}, true},
		{"a false head first", func(data []byte) { copy(data[100:], headMark) }, true},
		{"no head", func(data []byte) {
			for at := bytes.Index(data, headMark); at >= 0; at = bytes.Index(data, headMark) {
				data[at] ^= 1
			}
		}, false},
	} {
		data := bytes.Clone(sound)
		clear(data[:2*page])
		c.change(data)
		path := filepath.Join(t.TempDir(), "any.qdb")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		r, err := Check(path)
		if damaged := err == nil && len(r.Faults) > 0 && r.OpenEnd; damaged != c.ours {
			t.Errorf("%s: %+v, %v", c.name, r, err)
		}
		if !c.ours && (err == nil || !strings.Contains(err.Error(), "is no club file")) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// TestAFileInUseIsCheckedWithoutBbolt and says so; closed, bbolt looks at it too, and there is nothing to tell.
func TestAFileInUseIsCheckedWithoutBbolt(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	appendActions(t, s, season(20))
	r, err := Check(path)
	if want := fmt.Sprintf("the file is in use (process %d)", os.Getpid()); err != nil || !r.Sound() || len(r.Notes) != 1 || !strings.Contains(r.Notes[0], want) {
		t.Errorf("open: %+v, %v", r, err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	if r, err := Check(path); err != nil || !r.Sound() || len(r.Notes) > 0 {
		t.Errorf("closed: %+v, %v", r, err)
	}
}

// TestFilesWithoutAName are called this file.
func TestFilesWithoutAName(t *testing.T) {
	for _, err := range []error{&NewerError{What: "file format", Found: 9, Known: 2}, &NotOursError{Why: "it is empty"}, &DamagedError{Faults: []string{"x"}}} {
		if !strings.HasPrefix(err.Error(), "this file ") {
			t.Errorf("%v", err)
		}
	}
	if err := (&NotOursError{"club.qdb", "it is empty"}); err.Error() != "club.qdb is no club file: it is empty" {
		t.Error(err)
	}
}

// TestCarveHeadsFindsEachUntilItIsEnough, past what only begins like one.
func TestCarveHeadsFindsEachUntilItIsEnough(t *testing.T) {
	heads := []Head{newHead("first"), newHead("second"), newHead("third")}
	var file []byte
	for _, h := range heads {
		file = append(append(append(file, "some bytes"...), headMark...), h.encode()...)
	}
	file = append(file, headMark[:3]...)
	for enough := 1; enough <= 4; enough++ {
		var found []Head
		carveHeads(bytes.NewReader(file), int64(len(file)), func(h Head) bool {
			found = append(found, h)
			return len(found) < enough
		})
		if want := heads[:min(enough, 3)]; !slices.Equal(found, want) {
			t.Errorf("%d are enough: found %v, want %v", enough, found, want)
		}
	}
}

// TestANoteFarFromAllEventsIsDamage, and one that is near tells of events that are lost.
func TestANoteFarFromAllEventsIsDamage(t *testing.T) {
	for beyond, want := range map[uint64]string{maxNoted + 1: "the note of the newest event's number is damaged", maxNoted: "are missing", 7: "are missing", 0: ""} {
		path, recs := nightFile(t, 20)
		last := recs[len(recs)-1].Seq
		edit(t, path, func(tx *bolt.Tx) error { return tx.Bucket(logBucket).SetSequence(last + beyond) })
		r, err := Check(path)
		if err != nil || !strings.Contains(strings.Join(r.Faults, "; "), want) || (want == "") != r.Sound() || r.OpenEnd != (beyond > maxNoted) {
			t.Errorf("%d beyond: %+v, %v", beyond, r, err)
		}
	}
}

// TestAFreshFileNeverTakesANameThatIsTaken, also where the disk knows no links.
func TestAFreshFileNeverTakesANameThatIsTaken(t *testing.T) {
	dir := t.TempDir()
	taken, free := filepath.Join(dir, "taken"), filepath.Join(dir, "free")
	if err := os.WriteFile(taken, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := linkNew(filepath.Join(dir, "none"), taken); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a name that is taken: %v", err)
	}
	if err := linkNew(filepath.Join(dir, "none"), free); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("nothing to name: %v", err)
	}
	if err := linkNew(taken, free); err != nil {
		t.Error(err)
	}
}

// TestSweepGoesOnBehindAFolderThatIsNot there.
func TestSweepGoesOnBehindAFolderThatIsNot(t *testing.T) {
	dir, other := t.TempDir(), t.TempDir()
	left := filepath.Join(other, ".club.qdb.new-12345")
	for _, name := range []string{left, filepath.Join(other, "club.qdb.new-12345")} {
		if err := os.WriteFile(name, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	Sweep(filepath.Join(dir, "club.qdb"), filepath.Join(dir, "none"), other)
	files, err := os.ReadDir(other)
	if err != nil || len(files) != 1 || files[0].Name() != "club.qdb.new-12345" {
		t.Errorf("left are %v, %v", files, err)
	}
}

// TestPatienceIsHalfASecondUnlessAskedOtherwise.
func TestPatienceIsHalfASecondUnlessAskedOtherwise(t *testing.T) {
	if o := newOptions(nil); o.patience != 500*time.Millisecond || o.createdBy != "" {
		t.Errorf("%+v", o)
	}
	if o := newOptions([]Option{Patience(time.Minute), CreatedBy("v9")}); o.patience != time.Minute || o.createdBy != "v9" {
		t.Errorf("%+v", o)
	}
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

// TestAnEventThatVanishesIsDamage, whoever took it away while the store was open, and so is one that was altered.
func TestAnEventThatVanishesIsDamage(t *testing.T) {
	for name, change := range map[string]func(b *bolt.Bucket) error{
		"gone":    func(b *bolt.Bucket) error { return b.Delete(seqKey(7)) },
		"altered": func(b *bolt.Bucket) error { return b.Put(seqKey(7), []byte("something else")) },
	} {
		s := mustOpen(t, filepath.Join(t.TempDir(), "club.qdb"))
		appendActions(t, s, season(20))
		if err := s.db.Update(func(tx *bolt.Tx) error { return change(tx.Bucket(logBucket)) }); err != nil {
			t.Fatal(err)
		}
		var damaged *DamagedError
		var seen uint64
		for r, err := range s.Records(1) {
			if err != nil {
				if !errors.As(err, &damaged) || !strings.Contains(err.Error(), "event 7 was there and is no more") {
					t.Errorf("%s: %v", name, err)
				}
				break
			}
			seen = r.Seq
		}
		if damaged == nil || seen >= 7 {
			t.Errorf("%s: events up to %d were given, and the damage was %v", name, seen, damaged)
		}
	}
}

// TestAFileThatLooksLikeNothingButRecordsIsGivenUp: to add all of them up would take for ever.
func TestAFileThatLooksLikeNothingButRecordsIsGivenUp(t *testing.T) {
	const size = 512 << 10
	file := make([]byte, 0, size)
	for len(file) < size {
		begin := make([]byte, 16)
		begin[keySize] = frameLayout
		binary.BigEndian.PutUint32(begin[keySize+1:], uint32(max(frameMin, min(maxFrame, size-len(file)-keySize))))
		file = append(file, begin...)
	}
	if err := carve(bytes.NewReader(file), size, func(f frame) { t.Fatalf("found %+v", f) }); !errors.Is(err, errTooMany) {
		t.Errorf("it says %v", err)
	}
	if err := carve(bytes.NewReader(file[:8<<10]), 8<<10, func(f frame) { t.Fatalf("found %+v", f) }); err != nil {
		t.Errorf("of a part: %v", err)
	}
}

// TestAHeadThatIsCutShortIsNone, wherever it is cut.
func TestAHeadThatIsCutShortIsNone(t *testing.T) {
	whole := newHead("a maker").encode()
	for n := range len(whole) {
		if h, err := decodeHead(whole[:n]); err == nil {
			t.Errorf("of %d bytes: %+v", n, h)
		}
	}
}

// TestCompactingPaysForALargeFileThatIsMostlyFree, from one MiB on and above a half.
func TestCompactingPaysForALargeFileThatIsMostlyFree(t *testing.T) {
	for _, c := range []struct {
		bytes, free int64
		pays        bool
	}{{1 << 20, 1<<19 + 1, true}, {1 << 20, 1 << 19, false}, {1<<20 - 1, 1<<20 - 2, false}, {8 << 20, 5 << 20, true}} {
		if got := (Report{Bytes: c.bytes, Free: c.free}).Sparse(); got != c.pays {
			t.Errorf("%d of %d bytes free: %t", c.free, c.bytes, got)
		}
	}
}

// spoilt is a disk on which some bytes cannot be read.
type spoilt struct {
	data     []byte
	from, to int64
}

func (s spoilt) ReadAt(p []byte, off int64) (int, error) {
	end := min(off+int64(len(p)), int64(len(s.data)))
	switch {
	case off >= s.from && off < s.to:
		return 0, syscall.EIO
	case off < s.from && end > s.from:
		return copy(p, s.data[off:s.from]), syscall.EIO
	case off >= int64(len(s.data)):
		return 0, io.EOF
	}
	n := copy(p, s.data[off:end])
	if n < len(p) {
		return n, io.EOF
	}
	return n, nil
}

// TestCarveGoesOnBehindABadSector: only what lies in it is not found.
func TestCarveGoesOnBehindABadSector(t *testing.T) {
	var file []byte
	var want []uint64
	bad := [2]int64{100<<10 + 700, 112 << 10}
	for seq := uint64(1); len(file) < 300<<10; seq++ {
		f := frame{Record: session.Record{Seq: seq, Action: 1, Kind: "short", Payload: bytes.Repeat([]byte{byte(seq)}, 90)}}
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		from := int64(len(file))
		file = append(append(file, key...), value...)
		if to := int64(len(file)); to <= bad[0] || from >= bad[1] {
			want = append(want, seq)
		}
	}
	var found []uint64
	err := carve(spoilt{file, bad[0], bad[1]}, int64(len(file)), func(f frame) { found = append(found, f.Seq) })
	if err != nil || !slices.Equal(found, want) {
		t.Errorf("%d events were found of %d: %v", len(found), len(want), err)
	}
}

// TestCarveFindsTheLongestRecord that there can be.
func TestCarveFindsTheLongestRecord(t *testing.T) {
	f := frame{Record: session.Record{Seq: 9, Action: 9, Kind: strings.Repeat("k", math.MaxUint8), Payload: bytes.Repeat([]byte{7}, MaxPayload)}}
	key, value, err := f.encode()
	if err != nil || len(value) != maxFrame {
		t.Fatalf("%d bytes, %v", len(value), err)
	}
	file := append(append([]byte("before"), key...), value...)
	found := 0
	err = carve(bytes.NewReader(file), int64(len(file)), func(g frame) { found += int(g.Seq) })
	if err != nil || found != 9 {
		t.Errorf("found %d, %v", found, err)
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

// TestTheNearestOfTheRecordsTooFarIsNamed, not the farthest, and none that is within reach.
func TestTheNearestOfTheRecordsTooFarIsNamed(t *testing.T) {
	s := salvage{placed: map[uint64]frame{}, loose: map[uint64][]frame{}}
	for _, seq := range []uint64{5 + maxGap, 9 + 3*maxGap, 6 + maxGap, 7 + 2*maxGap} {
		s.placed[seq] = frame{Record: session.Record{Seq: seq}}
	}
	if got := s.beyond(5); got != 6+maxGap {
		t.Errorf("behind 5 it is %d, want %d", got, 6+maxGap)
	}
	if got := s.beyond(9 + 3*maxGap); got != 0 {
		t.Errorf("behind all it is %d", got)
	}
}

// TestARecordMayHaveFourMiB and no byte more.
func TestARecordMayHaveFourMiB(t *testing.T) {
	for size, ok := range map[int]bool{4 << 20: true, 4<<20 + 1: false} {
		f := frame{Record: session.Record{Seq: 1, Kind: "k", Payload: make([]byte, size)}}
		if _, _, err := f.encode(); (err == nil) != ok {
			t.Errorf("%d bytes: %v", size, err)
		}
	}
}

// TestARecordThatIsCutShortIsNone, wherever it is cut, in each layout.
func TestARecordThatIsCutShortIsNone(t *testing.T) {
	for _, layout := range []uint8{seedless, frameLayout} {
		f := frame{layout: layout, Record: session.Record{Seq: 3, Action: 3, Kind: "k", Payload: []byte("{}")}}
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		for n := range len(value) {
			if got, err := decodeFrame(key, value[:n]); err == nil {
				t.Errorf("layout %d, %d bytes of %d: %+v", layout, n, len(value), got)
			}
		}
		if got, err := decodeFrame(key, value); err != nil || got.Seq != 3 || got.Kind != "k" || string(got.Payload) != "{}" {
			t.Errorf("layout %d: %+v, %v", layout, got, err)
		}
		if _, err := decodeFrame(key[1:], value); err == nil {
			t.Error("a short key is taken")
		}
	}
}

// TestAnOldRecordOfAnotherFileIsTold: records of the older layout know their file by the first of them alone.
func TestAnOldRecordOfAnotherFileIsTold(t *testing.T) {
	for _, c := range []struct {
		before, seed uint32
		faults       int
	}{{7, 7, 0}, {8, 7, 1}} {
		f := frame{layout: seedless, before: c.before, Record: session.Record{Seq: 1, Action: 1, Kind: "k"}}
		key, value, err := f.encode()
		if err != nil {
			t.Fatal(err)
		}
		var checked chain
		if _, ok := checked.add(key, value); !ok {
			t.Fatal(checked.faults)
		}
		if checked.belong(c.seed); len(checked.faults) != c.faults {
			t.Errorf("first before %d, seed %d: %q", c.before, c.seed, checked.faults)
		}
	}
}

// TestAHeadOfAnotherFileTakesItsNoteAway: what another file noted as its newest event says nothing of this one.
func TestAHeadOfAnotherFileTakesItsNoteAway(t *testing.T) {
	mine, other := newHead("mine"), newHead("other")
	for _, c := range []struct {
		before Head
		noted  uint64
		open   bool
	}{{mine, 9, false}, {other, 0, true}, {Head{}, 9, false}} {
		r := Report{Head: c.before, noted: 9}
		if r.take(mine); r.Head != mine || r.noted != c.noted || r.OpenEnd != c.open {
			t.Errorf("behind the head of %q: %+v", c.before.CreatedBy, r)
		}
	}
}

// TestAReportTellsItsNotes, and is certain of the end by a note that is not behind the newest event.
func TestAReportTellsItsNotes(t *testing.T) {
	r := Report{Faults: []string{"event 3 is damaged"}, Notes: []string{"the file is in use"}}
	if text := r.String(); !strings.Contains(text, "event 3 is damaged") || !strings.Contains(text, "note: the file is in use") {
		t.Error(text)
	}
	for _, c := range []struct {
		noted, last uint64
		certain     bool
	}{{0, 0, false}, {1, 1, true}, {1, 0, true}, {4, 5, false}, {6, 5, true}} {
		if got := (Report{noted: c.noted, Last: c.last}).certain(); got != c.certain {
			t.Errorf("noted %d, last %d: %t", c.noted, c.last, got)
		}
	}
}
