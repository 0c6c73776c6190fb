package store

import (
	"errors"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	bolt "go.etcd.io/bbolt"

	"club/quadrille/session"
)

func TestAfterAFailedWriteTheFileIsReadAgain(t *testing.T) {
	for _, c := range []struct {
		name  string
		disk  func(*bolt.DB, []entry) error
		lands bool
		want  string
	}{
		{"full", func(*bolt.DB, []entry) error { return syscall.ENOSPC }, false, "the disk is full: make room"},
		{"read-only", func(*bolt.DB, []entry) error { return syscall.EROFS }, false, "the disk can only be read"},
		{"fails after the fact", func(db *bolt.DB, e []entry) error {
			return errors.Join(commit(db, e), syscall.EIO)
		}, true, "the disk failed"},
		{"panics after the fact", func(db *bolt.DB, e []entry) error {
			if err := commit(db, e); err != nil {
				return err
			}
			panic("page 7 is already freed")
		}, true, "changed under the program's hands"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := mustOpen(t, filepath.Join(t.TempDir(), "club.qdb"))
			before := season(30)
			appendActions(t, s, before)
			next := actionAt(s.Last() + 1)
			s.commit = c.disk
			err := s.Append(next)
			s.commit = commit
			var file *FileError
			if !errors.As(err, &file) || !strings.Contains(err.Error(), c.want) {
				t.Errorf("append says %v, want %q", err, c.want)
			}
			want := before
			if c.lands {
				// To do it again would do it twice: the store must find out first.
				if err := s.Append(next); !errors.Is(err, session.ErrOutOfStep) {
					t.Errorf("the second try says %v", err)
				}
				want = append(want, next...)
			}
			sameRecords(t, allOf(t, s), want)
			appendActions(t, s, actionAt(s.Last()+1))
			s.Close()
			mustBeSound(t, s.Path())
		})
	}
}

func TestFileThatIsGoneIsToldUntilItIsBack(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	recs := season(30)
	appendActions(t, s, recs)
	s.file.Close() // what a disk that was pulled out looks like
	next := actionAt(s.Last() + 1)
	var file *FileError
	if err := s.Append(next); !errors.As(err, &file) || !strings.Contains(err.Error(), "the disk is gone: connect it again") {
		t.Errorf("append says %v", err)
	}
	if err := s.Reopen(); err != nil {
		t.Fatal(err)
	}
	appendActions(t, s, next)
	sameRecords(t, allOf(t, s), append(recs, next...))
}

// TestAnEventThatVanishesIsDamage, whoever took it away while the store was open, and so is one that was altered.
func TestAnEventThatVanishesIsDamage(t *testing.T) {
	for name, change := range map[string]func(b *bolt.Bucket) error{
		"gone":    func(b *bolt.Bucket) error { return b.Delete(seqKey(7)) },
		"altered": func(b *bolt.Bucket) error { return b.Put(seqKey(7), []byte("something else")) },
	} {
		s := mustOpen(t, filepath.Join(t.TempDir(), "club.qdb"))
		appendActions(t, s, season(20))
		if err := s.db.Update(func(tx *bolt.Tx) error { return change(tx.Bucket(logBucket)) }); err != nil {
			t.Fatal(err)
		}
		var damaged *DamagedError
		var seen uint64
		for r, err := range s.Records(1) {
			if err != nil {
				if !errors.As(err, &damaged) || !strings.Contains(err.Error(), "event 7 was there and is no more") {
					t.Errorf("%s: %v", name, err)
				}
				break
			}
			seen = r.Seq
		}
		if damaged == nil || seen >= 7 {
			t.Errorf("%s: events up to %d were given, and the damage was %v", name, seen, damaged)
		}
	}
}
