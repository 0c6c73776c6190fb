package store

import (
	"encoding/binary"
	"errors"
	"hash/fnv"
	"os"
	"path/filepath"
	"testing"
)

// sealHeaders puts the right checksums on the headers of what may be a bbolt file, so that hostile
// numbers in them are met by more than the checksum.
func sealHeaders(data []byte) {
	page := os.Getpagesize()
	for _, at := range []int{16, page + 16} {
		if len(data) >= at+64 {
			sum := fnv.New64a()
			sum.Write(data[at : at+56])
			binary.NativeEndian.PutUint64(data[at+56:], sum.Sum64())
		}
	}
}

// FuzzOpen opens, checks and rescues what bytes there may be. Changes are given as a list of places
// and values, three bytes each, in a sound file, or as a whole file.
func FuzzOpen(f *testing.F) {
	path, _ := nightFile(f, 60)
	sound, err := os.ReadFile(path)
	if err != nil {
		f.Fatal(err)
	}
	sound = sound[:min(len(sound), 16*os.Getpagesize())]
	f.Add([]byte{}, true, false)
	f.Add([]byte("no club file"), false, false)
	f.Add([]byte{0, 24, 1, 0, 48, 255, 0, 56, 200}, true, true)
	f.Add([]byte{16, 10, 255, 32, 10, 255, 48, 12, 3}, true, true)
	f.Add(sound, false, false)
	f.Fuzz(func(t *testing.T, bytes []byte, edits, seal bool) {
		data := append([]byte(nil), bytes...)
		if edits {
			data = append([]byte(nil), sound...)
			for ; len(bytes) >= 3; bytes = bytes[3:] {
				data[int(binary.BigEndian.Uint16(bytes))%len(data)] = bytes[2]
			}
		}
		if seal {
			sealHeaders(data)
		}
		openAnything(t, data)
	})
}

func openAnything(t *testing.T, data []byte) {
	dir := t.TempDir()
	path := filepath.Join(dir, "club.qdb")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := Open(path)
	if err == nil {
		defer s.Close()
		for _, err := range s.Records(1) {
			if err != nil {
				t.Fatalf("it opens, but reading it says %v", err)
			}
		}
		if err := s.Append(actionAt(s.Last() + 1)); err != nil {
			t.Fatalf("it opens, but writing to it says %v", err)
		}
		s.Close()
		if r, err := Check(path); err != nil || !r.Sound() {
			t.Fatalf("it opens and was written to, but a check finds %v\n%s", err, r)
		}
		return
	}
	if !ours(err) {
		t.Fatalf("the error is not for people: %v", err)
	}
	to := filepath.Join(dir, "rescued.qdb")
	if _, err := Rescue(path, to); err != nil {
		return
	}
	if _, err := Look(to); err != nil {
		var damaged *DamagedError
		t.Fatalf("the rescued file is no good: %v", errors.As(err, &damaged))
	}
}
