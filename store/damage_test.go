package store

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"club/quadrille/session"
	"club/quadrille/store/pages"
)

// soundIn gives the numbers of all records of want whose own bytes, key and frame, are somewhere
// in data: what a rescue owes.
func soundIn(data []byte, want []session.Record, sealed [][]byte) map[uint64]bool {
	owed := map[uint64]bool{}
	for i, r := range want {
		if bytes.Contains(data, sealed[i]) {
			owed[r.Seq] = true
		}
	}
	return owed
}

// sealedRecords gives the bytes, key and frame, that a file keeps its records as.
func sealedRecords(tb testing.TB, path string) [][]byte {
	tb.Helper()
	var out [][]byte
	_, err := inspectShared(path, func() func(frame) {
		out = nil
		return func(f frame) {
			key, value, err := f.encode()
			if err != nil {
				tb.Fatal(err)
			}
			out = append(out, append(bytes.Clone(key), value...))
		}
	})
	if err != nil {
		tb.Fatal(err)
	}
	return out
}

// damageTrial is one damaged file and what must be true of it.
type damageTrial struct {
	dir    string
	want   []session.Record
	sealed [][]byte
	kept   session.Snapshot
}

// newTrial makes the file of a night with a snapshot in it, and gives its bytes.
func newTrial(t *testing.T) (damageTrial, []byte) {
	t.Helper()
	path, want := nightFile(t, 250)
	kept := session.Snapshot{Seq: 100, State: bytes.Repeat([]byte("the state "), 1500)}
	s := mustOpen(t, path)
	if err := errors.Join(s.KeepSnapshot(kept), s.Close()); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return damageTrial{t.TempDir(), want, sealedRecords(t, path), kept}, data
}

// try opens, checks and rescues damaged data. It tells whether the damage was noticed.
func (d damageTrial) try(t *testing.T, data []byte) (noticed bool) {
	t.Helper()
	path, to := filepath.Join(d.dir, "damaged.qdb"), filepath.Join(d.dir, "rescued.qdb")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	defer os.Remove(path)
	defer os.Remove(to)
	s, err := Open(path)
	if err == nil {
		defer s.Close()
		got := allOf(t, s)
		if len(got) < len(d.want) && strings.Contains(fmt.Sprint(s.Notes()), "headers was damaged") {
			d.told(t, path, uint64(len(got)))
			return true
		}
		sameRecords(t, got, d.want)
		if kept, ok := s.Snapshot(); ok && !reflect.DeepEqual(kept, d.kept) {
			t.Fatal("a damaged snapshot was given")
		}
		return false
	}
	var (
		damaged *DamagedError
		foreign *NotOursError
	)
	if !errors.As(err, &damaged) && !errors.As(err, &foreign) {
		t.Fatalf("the damage was told as %v", err)
	}
	if after, err := os.ReadFile(path); err != nil || !bytes.Equal(after, data) {
		t.Fatalf("the damaged file was changed (%v)", err)
	}
	if r, err := Check(path); err == nil && r.Sound() {
		t.Fatalf("it does not open (%v), but a check finds\n%s", damaged, r)
	}
	d.rescue(t, data, path, to)
	return true
}

func (d damageTrial) rescue(t *testing.T, data []byte, path, to string) {
	t.Helper()
	owed := soundIn(data, d.want, d.sealed)
	r, err := Rescue(path, to)
	var foreign *NotOursError
	if errors.As(err, &foreign) && len(owed) == 0 {
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	s, err := Open(to)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	saved := uint64(0)
	missing := map[uint64]bool{}
	all := allOf(t, s)
	for seq := uint64(len(all)) + 1; seq <= uint64(len(d.want)); seq++ {
		missing[seq] = true
	}
	for i, got := range all {
		if got.Kind == LostKind {
			missing[got.Seq] = true
			continue
		}
		if i >= len(d.want) {
			t.Fatalf("record %d was never written: %+v", i+1, got)
		}
		saved++
		if !reflect.DeepEqual(got, d.want[i]) {
			t.Fatalf("record %d was rescued as\n%+v, want\n%+v", i+1, got, d.want[i])
		}
		delete(owed, got.Seq)
	}
	if len(owed) > 0 || r.Records != saved {
		t.Fatalf("%d sound records were not rescued: %v\n%s", len(owed), owed, r)
	}
	for seq := range missing {
		if !tells(r, seq) {
			t.Fatalf("nothing says that record %d is missing:\n%s", seq, r)
		}
	}
}

// tells whether a report says that a record is lost or may be.
func tells(r Report, seq uint64) bool {
	if r.OpenEnd && seq > r.Last {
		return true
	}
	return slices.ContainsFunc(r.Faults, func(fault string) bool {
		var from, to uint64
		if _, err := fmt.Sscanf(fault, "event %d is lost", &from); err == nil {
			return from == seq
		}
		_, err := fmt.Sscanf(fault, "events %d to %d are lost", &from, &to)
		return err == nil && from <= seq && seq <= to
	})
}

// told makes sure that a check says of a file that opens what may be missing behind its last record.
func (d damageTrial) told(t *testing.T, path string, last uint64) {
	t.Helper()
	if r, err := Check(path); err != nil || !r.OpenEnd || r.Last != last || !strings.Contains(r.String(), fmt.Sprintf("events after %d may be missing", last)) {
		t.Fatalf("nothing says what may be missing: %v\n%s", err, r)
	}
}

func TestFlippedBitsAreHarmlessOrToldAndRescued(t *testing.T) {
	d, data := newTrial(t)
	r := rand.New(rand.NewPCG(5, 6))
	flips, noticed := atLength(120, 5000), 0
	for range flips {
		bit := r.IntN(len(data) * 8)
		data[bit/8] ^= 1 << (bit % 8)
		if d.try(t, data) {
			noticed++
		}
		data[bit/8] ^= 1 << (bit % 8)
	}
	t.Logf("%d of %d flips hit something that matters, in %d KiB", noticed, flips, len(data)>>10)
	if noticed == 0 {
		t.Error("no flip was noticed")
	}
}

func TestTruncatedFilesAreToldAndRescued(t *testing.T) {
	d, data := newTrial(t)
	page := os.Getpagesize()
	for size := 0; size < len(data); size += page / atLength(1, 4) {
		d.try(t, data[:size])
	}
}

func TestOverwrittenPagesAreToldAndRescued(t *testing.T) {
	d, data := newTrial(t)
	page := os.Getpagesize()
	junk := bytes.Repeat([]byte{0xa5, 1, 0, 0xff}, page/4)
	for at := 0; at+page <= len(data); at += page * atLength(3, 1) {
		for name, with := range map[string][]byte{"zeros": make([]byte, page), "junk": junk, "neighbour": data[:page]} {
			broken := bytes.Clone(data)
			copy(broken[at:], with)
			t.Run(fmt.Sprintf("%s on page %d", name, at/page), func(t *testing.T) { d.try(t, broken) })
		}
	}
}

// The end of the file is gone: at any byte, with and without a damaged header, and as zeros. Whatever
// comes out says which records may be missing, the last one too.
func TestALostEndIsToldInEveryCase(t *testing.T) {
	d, data := newTrial(t)
	r := rand.New(rand.NewPCG(9, 10))
	page := os.Getpagesize()
	used := lastUsedPage(t, data) * page
	lost := 0
	for i := range atLength(60, 400) {
		size := used - r.IntN(min(used, 12*page))
		broken := bytes.Clone(data)
		switch i % 4 {
		case 0:
			broken = broken[:size]
		case 1:
			clear(broken[size:])
		case 2:
			clear(broken[size/page*page:][:page])
		case 3:
			broken = broken[:size]
			broken[r.IntN(2)*page+16+r.IntN(64)] ^= 1 << r.IntN(8)
		}
		if d.try(t, broken) {
			lost++
		}
	}
	t.Logf("%d losses were noticed", lost)
}

// lastUsedPage is the number of the page behind the last one that holds anything.
func lastUsedPage(t *testing.T, data []byte) int {
	t.Helper()
	file, err := pages.Open(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	return int(file.Pages())
}

// Pages of another club's file stand in the place of ours, one or several, as a disk that is mixed up
// leaves them. None of their records is taken for one of ours, and all of ours that are left are saved.
func TestPagesOfAnotherClubAreNotAdopted(t *testing.T) {
	page := os.Getpagesize()
	for _, older := range []bool{false, true} {
		t.Run(fmt.Sprintf("older %v", older), func(t *testing.T) {
			d, data := newTrial(t)
			theirs := foreignFile(t)
			if older {
				d, data = olderLayout(t, d.want)
				_, theirs = olderLayout(t, foreignRecords(len(d.want)))
			}
			r := rand.New(rand.NewPCG(11, 12))
			adoptable := min(len(data), len(theirs)) / page
			for i := range atLength(60, 400) {
				broken := bytes.Clone(data)
				first := 2 + r.IntN(adoptable-2)
				for k := range 1 + r.IntN(3)*(i%2) {
					at := (first + k) % adoptable
					from := at
					if i%3 == 2 {
						from = 2 + r.IntN(adoptable-2)
					}
					copy(broken[at*page:(at+1)*page], theirs[from*page:(from+1)*page])
				}
				d.try(t, broken)
			}
		})
	}
}

// foreignRecords are those of another club.
func foreignRecords(n int) []session.Record {
	recs := season(n)
	for i := range recs {
		recs[i].Payload = []byte(fmt.Sprintf(`{"theirs":%d}`, i))
		recs[i].Time = recs[i].Time.Add(-1000 * time.Hour)
	}
	return recs
}

func foreignFile(t *testing.T) []byte {
	t.Helper()
	path := filepath.Join(t.TempDir(), "theirs.qdb")
	s := mustOpen(t, path)
	appendActions(t, s, foreignRecords(250))
	s.Close()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// olderLayout makes a file as the first programs did: frames of layout 1, and no note of the newest
// record's number.
func olderLayout(t *testing.T, recs []session.Record) (damageTrial, []byte) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "older.qdb")
	s := mustOpen(t, path)
	sum := s.head.seed()
	for part := range slices.Chunk(recs, 3) {
		err := s.db.Update(func(tx *bolt.Tx) error {
			for i, r := range part {
				f := frame{Record: r, layout: seedless, before: sum, more: uint32(len(part) - 1 - i)}
				key, value, err := f.encode()
				if err == nil {
					err = tx.Bucket(logBucket).Put(key, value)
				}
				if err != nil {
					return err
				}
				sum = f.sum
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	s.Close()
	mustBeSound(t, path)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return damageTrial{dir: t.TempDir(), want: recs, sealed: sealedRecords(t, path)}, data
}

// A file of the older layout goes on in the newer one.
func TestAFileOfTheOlderLayoutGoesOn(t *testing.T) {
	want := season(60)
	_, data := olderLayout(t, want)
	path := filepath.Join(t.TempDir(), "club.qdb")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	s := mustOpen(t, path)
	more := actionAt(s.Last() + 1)
	appendActions(t, s, more)
	s.Close()
	mustBeSound(t, path)
	sameRecords(t, allOf(t, mustOpen(t, path)), append(want, more...))
}

// A page that claims fewer records than were written, which no checksum covers, is damaged, and so is a
// file whose newest page is an older copy of itself.
func TestAPageThatForgetsItsLastRecordIsTold(t *testing.T) {
	d, data := newTrial(t)
	page := os.Getpagesize()
	for at := 2 * page; at+page <= len(data); at += page {
		broken := bytes.Clone(data)
		if count := binary.NativeEndian.Uint16(broken[at+10:]); count > 1 {
			binary.NativeEndian.PutUint16(broken[at+10:], count-1)
			d.try(t, broken)
		}
	}
}
