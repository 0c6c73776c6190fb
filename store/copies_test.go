package store

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
)

func TestCopiesAreWholeWhileAnotherProcessWrites(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "club.qdb")
	c := start(t, "write", path)
	copies := 0
	for acked := uint64(0); copies < atLength(20, 200); copies++ {
		if _, err := fmt.Sscanf(c.line(t), "acked %d", &acked); err != nil {
			t.Fatal(err)
		}
		to := filepath.Join(dir, fmt.Sprintf("copy %d", copies))
		r, err := Backup(path, to)
		if err != nil {
			t.Fatal(err)
		}
		if r.Last < acked || r.Path != to {
			t.Fatalf("the copy %s ends with %d, but %d was acknowledged before", r.Path, r.Last, acked)
		}
		v, err := Look(path)
		if err != nil {
			t.Fatal(err)
		}
		if v.Last() < r.Last {
			t.Fatalf("a later look ends with %d, the copy with %d", v.Last(), r.Last)
		}
		sameRecords(t, allOf(t, v), season(int(v.Last()))[:v.Last()])
		if err := v.Append(actionAt(v.Last() + 1)); !errors.Is(err, ErrReadOnly) {
			t.Fatalf("a view took a record: %v", err)
		}
	}
	c.cmd.Process.Kill()
	c.cmd.Wait()
	for n := range copies {
		mustBeSound(t, filepath.Join(dir, fmt.Sprintf("copy %d", n)))
	}
}

func TestNothingIsEverWrittenOver(t *testing.T) {
	path, _ := nightFile(t, 5)
	taken := filepath.Join(t.TempDir(), "taken")
	if err := os.WriteFile(taken, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, call := range map[string]func() error{
		"backup":  func() error { _, err := Backup(path, taken); return err },
		"rescue":  func() error { _, err := Rescue(path, taken); return err },
		"restore": func() error { return Restore(path, path, taken) },
	} {
		if err := call(); err == nil || !strings.Contains(err.Error(), "is there already: choose another name") {
			t.Errorf("%s says %v", name, err)
		}
		if b, err := os.ReadFile(taken); err != nil || string(b) != "mine" {
			t.Errorf("%s wrote over a file (%v)", name, err)
		}
	}
}

func TestOnlyTheNewestBackupsAreKept(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "backups")
	s := mustOpen(t, filepath.Join(t.TempDir(), "club.qdb"))
	now := time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC)
	var made []string
	for i := range 13 {
		appendActions(t, s, actionAt(s.Last()+1))
		to, err := s.Keep(dir, 10, now.Add(time.Duration(i)*time.Minute))
		if err != nil {
			t.Fatal(err)
		}
		made = append(made, to)
		if i == 0 {
			for _, name := range []string{"club-notes.qdb", "club-20261125T190000.000Z.txt", "other.qdb"} {
				if err := os.WriteFile(filepath.Join(dir, name), nil, 0o600); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	kept, err := Kept(s.Path(), dir)
	if err != nil || fmt.Sprint(kept) != fmt.Sprint(made[3:]) {
		t.Fatalf("kept %v (%v), want %v", kept, err, made[3:])
	}
	for _, name := range kept {
		mustBeSound(t, name)
	}
	if files, err := os.ReadDir(dir); err != nil || len(files) != len(kept)+3 {
		t.Errorf("there are %d files (%v)", len(files), err)
	}
}

func TestRestoreKeepsWhatWasThere(t *testing.T) {
	good, recs := nightFile(t, 40)
	dir := t.TempDir()
	path, kept := filepath.Join(dir, "club.qdb"), filepath.Join(dir, "club.before.qdb")
	if err := Restore(good, path, kept); err != nil { // nothing was there
		t.Fatal(err)
	}
	broken := bytes.Repeat([]byte("broken"), 2000)
	if err := os.WriteFile(path, broken, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Restore(good, path, kept); err != nil {
		t.Fatal(err)
	}
	if b, err := os.ReadFile(kept); err != nil || !bytes.Equal(b, broken) {
		t.Errorf("what was there was not kept (%v)", err)
	}
	s := mustOpen(t, path)
	sameRecords(t, allOf(t, s), recs)
	var (
		locked *LockedError
		bad    *NotOursError
	)
	if err := Restore(good, path, kept+"2"); !errors.As(err, &locked) {
		t.Errorf("into an open file, it says %v", err)
	}
	s.Close()
	if err := Restore(kept, path, kept+"2"); !errors.As(err, &bad) {
		t.Errorf("from a broken file, it says %v", err)
	}
	sameRecords(t, allOf(t, mustOpen(t, path)), recs)
}

func TestForgottenNamesAreNowhereInTheFile(t *testing.T) {
	const name = "Ada Quill"
	dir := t.TempDir()
	path := filepath.Join(dir, "club.qdb")
	s := mustOpen(t, path)
	recs := season(300)
	for i := range recs {
		if i%7 == 0 {
			recs[i].Payload = []byte(`{"name":"` + name + `"}`)
		}
	}
	appendActions(t, s, recs)
	// Somebody who was killed while making a file left it behind.
	if err := os.WriteFile(filepath.Join(dir, passingPrefix(path)+"1"), []byte(name), 0o600); err != nil {
		t.Fatal(err)
	}
	before := s.Head()
	err := s.Rewrite(func(r session.Record) session.Record {
		r.Payload = bytes.ReplaceAll(r.Payload, []byte(name), []byte("somebody"))
		return r
	})
	if err != nil {
		t.Fatal(err)
	}
	var locked *LockedError
	if _, err := Open(path, Patience(0)); !errors.As(err, &locked) {
		t.Fatalf("after a rewrite the file can be opened twice: %v", err)
	}
	for i := range recs {
		recs[i].Payload = bytes.ReplaceAll(recs[i].Payload, []byte(name), []byte("somebody"))
	}
	more := actionAt(s.Last() + 1)
	appendActions(t, s, more)
	s.Close()
	s = mustOpen(t, path)
	sameRecords(t, allOf(t, s), append(recs, more...))
	if s.Head() != before {
		t.Errorf("the head became %+v", s.Head())
	}
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if b, err := os.ReadFile(filepath.Join(dir, f.Name())); err != nil || bytes.Contains(b, []byte(name)) {
			t.Errorf("%s still holds the name (%v)", f.Name(), err)
		}
	}
}

func TestDamagedSpareHeaderIsTold(t *testing.T) {
	path, recs := nightFile(t, 40)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	notes, faults := 0, 0
	for header := range 2 {
		broken := bytes.Clone(data)
		broken[header*os.Getpagesize()+16+48] ^= 1
		if err := os.WriteFile(path, broken, 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := Open(path)
		var damaged *DamagedError
		switch {
		case err == nil:
			sameRecords(t, allOf(t, s), recs)
			if told := fmt.Sprint(s.Notes()); strings.Contains(told, "one of the file's two headers was damaged") && strings.Contains(told, fmt.Sprintf("events after %d may be missing", len(recs))) {
				notes++
			}
			s.Close()
		case errors.As(err, &damaged):
			faults += len(damaged.Faults)
		default:
			t.Fatal(err)
		}
	}
	if notes != 1 || faults != 1 {
		t.Errorf("%d notes and %d faults; the older header is worth a note, the newer one a fault", notes, faults)
	}
}
