package store

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"
)

// What killed makers of files left is removed by the next open or backup, whatever they were making,
// and what a running process makes, or somebody else's file, is not.
func TestWhatKilledMakersLeftIsRemoved(t *testing.T) {
	dir := t.TempDir()
	path, backups := filepath.Join(dir, "club.qdb"), filepath.Join(dir, "backups")
	if err := os.Mkdir(backups, 0o700); err != nil {
		t.Fatal(err)
	}
	dead := start(t, "hold", filepath.Join(t.TempDir(), "other.qdb"))
	dead.line(t)
	dead.cmd.Process.Kill()
	dead.cmd.Wait()
	gone, lives := dead.cmd.Process.Pid, os.Getpid()
	left := []string{
		".club.qdb.new-123", fmt.Sprintf(".club.qdb.new-%d-123", gone), ".quadrille-77", fmt.Sprintf(".quadrille-%d-77", gone),
		".club-before-20261125T201500.qdb.new-9", "backups/.club-20261125T190000.000Z.qdb.new-5",
		fmt.Sprintf("backups/.club-20261125T190000.000Z.qdb.new-%d-5", gone),
	}
	kept := []string{
		fmt.Sprintf(".club.qdb.new-%d-123", lives), fmt.Sprintf(".quadrille-%d-1", lives), "club.qdb.new-1", ".club.qdb.new-",
		".other.qdb.new-1", ".clubs.qdb.new-1", ".quadrille-old", "backups/.other.qdb.new-1",
	}
	for _, name := range slices.Concat(left, kept) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("Ada"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	s := mustOpen(t, path)
	if _, err := s.Keep(backups, 3, time.Unix(1_790_000_000, 0)); err != nil {
		t.Fatal(err)
	}
	for _, name := range left {
		if _, err := os.Lstat(filepath.Join(dir, name)); err == nil {
			t.Errorf("%s is still there", name)
		}
	}
	for _, name := range kept {
		if _, err := os.Lstat(filepath.Join(dir, name)); err != nil {
			t.Errorf("%s was removed", name)
		}
	}
}

// An older program does not write its number into a passing name: a file that it locks is held.
func TestALockedPassingFileIsHeld(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	name := filepath.Join(filepath.Dir(path), passingPrefix(path)+"4")
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if locked, err := tryLock(f); err != nil || !locked {
		t.Fatal(err)
	}
	Sweep(path)
	if _, err := os.Lstat(name); err != nil {
		t.Error("it was removed")
	}
	unlock(f)
	Sweep(path)
	if _, err := os.Lstat(name); err == nil {
		t.Error("it is still there")
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
