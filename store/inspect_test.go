package store

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	bolt "go.etcd.io/bbolt"
)

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
