package store

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"club/quadrille/session"
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
		sameRecords(t, allOf(t, s), d.want)
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
	for i, got := range allOf(t, s) {
		if got.Kind == LostKind {
			continue
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
