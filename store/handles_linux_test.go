package store

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// TestAMovedFileIsTracked to where it is now, as far as the system tells.
func TestAMovedFileIsTracked(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	appendActions(t, s, season(10))
	if err := os.Rename(path, path+".elsewhere"); err != nil {
		t.Fatal(err)
	}
	var displaced *DisplacedError
	if err := s.InPlace(); !errors.As(err, &displaced) || displaced.Now != path+".elsewhere" || displaced.Removed || displaced.Taken {
		t.Errorf("%+v, %v", displaced, err)
	}
	if err := os.Remove(path + ".elsewhere"); err != nil {
		t.Fatal(err)
	}
	if err := s.InPlace(); !errors.As(err, &displaced) || displaced.Now != "" || !displaced.Removed {
		t.Errorf("%+v, %v", displaced, err)
	}
}

// TestNoFileIsLeftOpen by what puts a new file in the place of the old one, looks at files, or copies them.
func TestNoFileIsLeftOpen(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	appendActions(t, s, season(30))
	open := func() int {
		handles, err := os.ReadDir("/proc/self/fd")
		if err != nil {
			t.Fatal(err)
		}
		return len(handles)
	}
	before := open()
	for i := range 8 {
		if err := s.Compact(); err != nil {
			t.Fatal(err)
		}
		if _, err := s.Keep(filepath.Join(filepath.Dir(path), "kept"), 3, time.Unix(int64(i), 0)); err != nil {
			t.Fatal(err)
		}
		if _, err := Check(path); err != nil { // in use
			t.Fatal(err)
		}
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	for range 8 {
		if r, err := Check(path); err != nil || !r.Sound() {
			t.Fatal(r, err)
		}
	}
	if now := open(); now > before {
		t.Errorf("%d files are open, %d before", now, before)
	}
}
