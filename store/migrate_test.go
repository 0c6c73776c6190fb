package store

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"club/quadrille/session"
)

// No older format than 1 exists. These tests make one up, format 0, in which a kind had another
// name, and the step from it: what they hold is the way of migrating, not a step of a real one.

// fromFormat0 is that step.
func fromFormat0(r session.Record) session.Record {
	if r.Kind == "PointWon" {
		r.Kind = "RallyWon"
	}
	return r
}

// olderStep makes the step known for the time of a test.
func olderStep(t *testing.T) {
	t.Helper()
	steps[0] = fromFormat0
	t.Cleanup(func() { delete(steps, 0) })
}

func init() { roles["migrate"] = migrateFile }

// migrateFile opens a file of format 0.
func migrateFile(path string) error {
	steps[0] = fromFormat0
	fmt.Println("begins")
	s, err := Open(path)
	if err != nil {
		return err
	}
	fmt.Println("done")
	return s.Close()
}

// olderFile makes a file of format 0, and gives its records and what they are in format 1.
func olderFile(t *testing.T) (path string, old, want []session.Record) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "club.qdb")
	want = season(120)
	for _, r := range want {
		if r.Kind == "RallyWon" {
			r.Kind = "PointWon"
		}
		old = append(old, r)
	}
	s := mustOpen(t, path)
	appendActions(t, s, old)
	head := s.Head()
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	head.Schema = 0
	edit(t, path, func(tx *bolt.Tx) error { return tx.Bucket(metaBucket).Put(headKey, head.encode()) })
	return path, old, want
}

// beside lists the copies that a migration left beside a file.
func beside(t *testing.T, path string) []string {
	t.Helper()
	copies, err := filepath.Glob(strings.TrimSuffix(path, ".qdb") + "-format0-*.qdb")
	if err != nil {
		t.Fatal(err)
	}
	return copies
}

func TestAnOlderFormatIsBroughtUpToDateAfterABackup(t *testing.T) {
	olderStep(t)
	path, old, want := olderFile(t)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	v, err := Look(path)
	if err != nil {
		t.Fatal(err)
	}
	sameRecords(t, allOf(t, v), want)
	if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) || len(beside(t, path)) > 0 {
		t.Fatalf("a look has changed the file (%v)", err)
	}

	s := mustOpen(t, path)
	sameRecords(t, allOf(t, s), want)
	if s.Head().Schema != Schema || len(s.Notes()) != 1 || !strings.Contains(s.Notes()[0], "was of format 0 and is now of format 1") {
		t.Errorf("the head is %+v, the notes %q", s.Head(), s.Notes())
	}
	appendActions(t, s, actionAt(s.Last()+1))
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	mustBeSound(t, path)
	if s = mustOpen(t, path); len(s.Notes()) > 0 {
		t.Errorf("the second time it says %q", s.Notes())
	}

	copies := beside(t, path)
	if len(copies) != 1 {
		t.Fatalf("%d copies of the old file were kept", len(copies))
	}
	steps[0] = func(r session.Record) session.Record { return r }
	kept, err := Look(copies[0])
	if err != nil {
		t.Fatal(err)
	}
	sameRecords(t, allOf(t, kept), old)
	if kept.Report().Head.Schema != 0 {
		t.Errorf("the copy is of format %d", kept.Report().Head.Schema)
	}
}

func TestAFileIsNotTouchedWhenItCannotBeMigrated(t *testing.T) {
	olderStep(t)
	path, _, _ := olderFile(t)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	steps[0] = func(r session.Record) session.Record { r.Kind = strings.Repeat("k", 300); return r } // cannot be written
	if _, err := Open(path); err == nil || !strings.Contains(err.Error(), "could not be brought up to date") {
		t.Errorf("open says %v", err)
	}
	if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) {
		t.Errorf("the file was changed (%v)", err)
	}
	steps[0] = fromFormat0
	if s, err := Open(path); err != nil {
		t.Errorf("with the right step it says %v", err)
	} else if err := s.Close(); err != nil {
		t.Error(err)
	}
}

func TestAFormatThatNeverWasIsTold(t *testing.T) {
	path, _, _ := olderFile(t)
	const want = "the file format 0 is none that there ever was"
	var damaged *DamagedError
	if _, err := Open(path); !errors.As(err, &damaged) || !strings.Contains(err.Error(), want) {
		t.Errorf("open says %v", err)
	}
	if r, err := Check(path); err != nil || r.Sound() {
		t.Errorf("a check says %v, %v", r, err)
	}
	if _, err := Rescue(path, path+".new"); err != nil {
		t.Error(err)
	}
	mustBeSound(t, path+".new")
}

// A migration that is killed leaves the old file or the new one, both of them whole.
func TestAKilledMigrationLosesNothing(t *testing.T) {
	olderStep(t)
	source, _, want := olderFile(t)
	data, err := os.ReadFile(source)
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(7, 8))
	finished := 0
	for range atLength(30, 500) {
		path := filepath.Join(t.TempDir(), "club.qdb")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		c := start(t, "migrate", path)
		c.line(t)
		timer := time.AfterFunc(time.Duration(r.IntN(8_000))*time.Microsecond, func() { c.cmd.Process.Kill() })
		if c.lines.Scan() {
			finished++
		}
		c.cmd.Wait()
		timer.Stop()
		s := mustOpen(t, path)
		sameRecords(t, allOf(t, s), want)
		s.Close()
		mustBeSound(t, path)
		if copies := beside(t, path); len(copies) == 0 {
			t.Fatal("the file was migrated without a copy")
		}
	}
	t.Logf("%d migrations were finished before the kill", finished)
}
