package store

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

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
