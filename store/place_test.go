//go:build unix

package store

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	bolt "go.etcd.io/bbolt"

	"club/quadrille/session"
)

var movedAt = time.Date(2026, 11, 25, 20, 15, 0, 0, time.UTC)

// displacements are what other programs do to a club file that is open.
var displacements = map[string]struct {
	do    func(path string) error
	says  string // of the error
	aside bool   // something else stands there, which must be kept
}{
	"removed":        {os.Remove, "the club file was removed", false},
	"moved":          {func(path string) error { return os.Rename(path, path+".moved") }, "the club file was moved", false},
	"folder removed": {func(path string) error { return os.RemoveAll(filepath.Dir(path)) }, "the club file was removed", false},
	"folder moved":   {func(path string) error { return os.Rename(filepath.Dir(path), filepath.Dir(path)+"2") }, "the club file was moved", false},
	"folder is a file": {func(path string) error {
		dir := filepath.Dir(path)
		return errors.Join(os.RemoveAll(dir), os.WriteFile(dir, []byte("mine"), 0o600))
	}, "the club file was removed", false},
	"replaced": {func(path string) error {
		return errors.Join(os.WriteFile(path+".2", []byte("mine"), 0o600), os.Rename(path+".2", path))
	}, "another file stands there now, the club file was removed", true},
	"replaced by a folder": {func(path string) error {
		return errors.Join(os.Remove(path), os.Mkdir(path, 0o700))
	}, "another file stands there now, the club file was removed", true},
	"moved and made anew": {func(path string) error {
		return errors.Join(os.Rename(path, path+".moved"), os.WriteFile(path, []byte("mine"), 0o600))
	}, "another file stands there now, the club file was moved", true},
}

// What becomes of the file is told by the next write and without one, nothing is acknowledged, and
// the whole file comes back to its place with all that was saved and whatever else stood there kept.
func TestAFileThatLostItsPlaceIsToldAndPutBack(t *testing.T) {
	for name, c := range displacements {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "club", "club.qdb")
			s := mustOpen(t, path)
			recs := season(60)
			appendActions(t, s, recs)
			if err := s.InPlace(); err != nil {
				t.Fatal(err)
			}
			if err := c.do(path); err != nil {
				t.Fatal(err)
			}
			next := actionAt(s.Last() + 1)
			for what, err := range map[string]error{"a look": s.InPlace(), "append": s.Append(next), "reopen": s.Reopen()} {
				var displaced *DisplacedError
				if !errors.As(err, &displaced) || !strings.Contains(err.Error(), c.says) {
					t.Errorf("%s says %v, want %q", what, err, c.says)
				}
			}
			if s.Last() != uint64(len(recs)) {
				t.Fatalf("record %d was acknowledged", s.Last())
			}
			if name == "folder is a file" {
				if _, err := s.PutBack(movedAt); err == nil {
					t.Error("the folder's name is taken, and nothing was said")
				}
				if err := os.Remove(filepath.Dir(path)); err != nil {
					t.Fatal(err)
				}
			}
			aside, err := s.PutBack(movedAt)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := os.Stat(aside); (aside != "") != c.aside || c.aside && err != nil {
				t.Errorf("what stood there is now %q (%v)", aside, err)
			}
			if aside != "" && filepath.Base(aside) != "club-before-20261125T201500.qdb" {
				t.Errorf("it was moved to %s", aside)
			}
			appendActions(t, s, next)
			s.Close()
			sameRecords(t, allOf(t, mustOpen(t, path)), append(recs, next...))
			left, err := filepath.Glob(filepath.Join(filepath.Dir(path), ".*"))
			if err != nil || len(left) > 0 {
				t.Errorf("left behind: %v", left)
			}
		})
	}
}

// A file that loses its place between the look before a write and its end is no acknowledged write,
// but the record is in what is put back.
func TestAFileThatIsRemovedDuringTheWriteAcknowledgesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	recs := season(20)
	appendActions(t, s, recs)
	next := actionAt(s.Last() + 1)
	plain := s.commit
	s.commit = func(db *bolt.DB, e []entry) error { return errors.Join(os.Remove(path), plain(db, e)) }
	err := s.Append(next)
	s.commit = plain
	var displaced *DisplacedError
	if !errors.As(err, &displaced) || s.Last() != uint64(len(recs)) {
		t.Fatalf("append says %v, and the last record is %d", err, s.Last())
	}
	if _, err := s.PutBack(movedAt); err != nil {
		t.Fatal(err)
	}
	sameRecords(t, allOf(t, s), append(recs, next...))
}

// A file that comes back by itself is as good as before.
func TestAFileThatIsMovedBackIsWrittenToAgain(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	if err := os.Rename(path, path+"2"); err != nil {
		t.Fatal(err)
	}
	var displaced *DisplacedError
	if err := s.Append(actionAt(1)); !errors.As(err, &displaced) || displaced.Removed {
		t.Fatalf("append says %v", err)
	}
	if err := os.Rename(path+"2", path); err != nil {
		t.Fatal(err)
	}
	appendActions(t, s, actionAt(1))
	if aside, err := s.PutBack(movedAt); err != nil || aside != "" {
		t.Errorf("without need it says %q, %v", aside, err)
	}
}

// A backup of a file that lost its place has all of it.
func TestABackupIsOfTheOpenFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	recs := season(20)
	appendActions(t, s, recs)
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	to := filepath.Join(t.TempDir(), "copy.qdb")
	if err := s.Backup(to); err != nil {
		t.Fatal(err)
	}
	sameRecords(t, allOf(t, mustOpen(t, to)), recs)
}

// A file that another Quadrille made in the place of a lost one, and has open, is not taken from it.
func TestAFileInUseIsNotMovedAside(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	other := mustOpen(t, path)
	var locked *LockedError
	if _, err := s.PutBack(movedAt); !errors.As(err, &locked) {
		t.Fatalf("it says %v", err)
	}
	if err := other.InPlace(); err != nil {
		t.Error(err)
	}
	other.Close()
	if aside, err := s.PutBack(movedAt); err != nil || aside == "" {
		t.Errorf("when it is closed: %q, %v", aside, err)
	}
}

// A symbolic link is followed once, when the file is opened: whatever replaces the file later leaves
// the link, and nothing of the old file stays behind it.
func TestALinkIsFollowedOnceAndKept(t *testing.T) {
	dir := t.TempDir()
	link, real := filepath.Join(dir, "link.qdb"), filepath.Join(dir, "far", "club.qdb")
	if err := os.Mkdir(filepath.Dir(real), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(real, link); err != nil {
		t.Skip("this system has no symbolic links:", err)
	}
	if _, err := Open(link); err == nil || !strings.Contains(err.Error(), "is a link to "+real+", and nothing is there") {
		t.Errorf("a link that leads nowhere is told as %v", err)
	}
	mustOpen(t, real).Close()
	s := mustOpen(t, link)
	recs := season(20)
	appendActions(t, s, recs)
	if s.Path() != real {
		t.Errorf("the file is %s", s.Path())
	}
	change := func(r session.Record) session.Record { r.Version = 7; return r }
	if err := s.Rewrite(change); err != nil {
		t.Fatal(err)
	}
	isLink := func() {
		t.Helper()
		if to, err := os.Readlink(link); err != nil || to != real {
			t.Fatalf("the link leads to %q (%v)", to, err)
		}
	}
	isLink()
	if _, err := Open(real, Patience(0)); !errors.As(err, new(*LockedError)) {
		t.Errorf("behind the link the file can be opened twice: %v", err)
	}
	if err := os.Remove(real); err != nil {
		t.Fatal(err)
	}
	if _, err := s.PutBack(movedAt); err != nil {
		t.Fatal(err)
	}
	isLink()
	if err := errors.Join(os.Remove(link), os.WriteFile(link, []byte("mine"), 0o600)); err != nil {
		t.Fatal(err)
	}
	if aside, err := s.PutBack(movedAt); err != nil || aside == "" || s.Path() != link {
		t.Errorf("for a link that was replaced: %q, %v", aside, err)
	}
	s.Close()
	if got := allOf(t, mustOpen(t, link)); len(got) != len(recs) || got[0].Version != 7 {
		t.Errorf("%d records are there, the first of version %d", len(got), got[0].Version)
	}
}

// Restoring over a link replaces what it leads to.
func TestARestoreKeepsALink(t *testing.T) {
	good, recs := nightFile(t, 20)
	dir := t.TempDir()
	link, real := filepath.Join(dir, "link.qdb"), filepath.Join(dir, "club.qdb")
	mustOpen(t, real).Close()
	if err := os.Symlink(real, link); err != nil {
		t.Skip("this system has no symbolic links:", err)
	}
	if err := Restore(good, link, filepath.Join(dir, "kept.qdb")); err != nil {
		t.Fatal(err)
	}
	if to, err := os.Readlink(link); err != nil || to != real {
		t.Fatalf("the link leads to %q (%v)", to, err)
	}
	sameRecords(t, allOf(t, mustOpen(t, real)), recs)
}

// What is no plain file is refused at once: a pipe would be waited for, and a device has no end.
func TestPipesAndDevicesAreRefusedAtOnce(t *testing.T) {
	dir := t.TempDir()
	pipe := filepath.Join(dir, "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	for path, what := range map[string]string{pipe: "it is a pipe", "/dev/zero": "it is a device", dir: "it is a folder"} {
		for name, call := range map[string]func() error{
			"open":    func() error { _, err := Open(path); return err },
			"look":    func() error { _, err := Look(path); return err },
			"check":   func() error { _, err := Check(path); return err },
			"rescue":  func() error { _, err := Rescue(path, filepath.Join(dir, "new")); return err },
			"backup":  func() error { _, err := Backup(path, filepath.Join(dir, "new")); return err },
			"restore": func() error { return Restore(path, filepath.Join(dir, "new"), filepath.Join(dir, "kept")) },
			"replace": func() error { return Restore(pipe, path, filepath.Join(dir, "kept")) },
		} {
			var foreign *NotOursError
			if err := call(); !errors.As(err, &foreign) || foreign.Why != what && foreign.Path == path {
				t.Errorf("%s of %s says %v", name, path, err)
			}
		}
	}
}

// A file that another program cuts short is told as damaged by the next look and by the next action, in
// words and not in those of the Go runtime, and nothing is acknowledged any more.
func TestAFileThatIsCutShortIsToldInWords(t *testing.T) {
	for _, share := range []int64{0, 1, 2} {
		path := filepath.Join(t.TempDir(), "club.qdb")
		s := mustOpen(t, path)
		appendActions(t, s, season(200))
		info, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.Truncate(path, info.Size()*share/8); err != nil {
			t.Fatal(err)
		}
		before := s.Last()
		for _, err := range []error{s.InPlace(), s.Append(actionAt(before + 1)), s.InPlace(), s.Reopen()} {
			if err == nil || strings.Contains(err.Error(), "runtime") || strings.Contains(err.Error(), "memory") {
				t.Errorf("cut to %d eighths it says %v", share, err)
			}
		}
		if s.Last() != before {
			t.Errorf("cut to %d eighths record %d was acknowledged", share, s.Last())
		}
	}
}
