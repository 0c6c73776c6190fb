package store

import (
	"errors"
	"fmt"
	"os"
	"time"

	bolt "go.etcd.io/bbolt"
	berrors "go.etcd.io/bbolt/errors"
)

// Open opens the club file at path for this process alone, and makes it (mode 0600, its folder
// 0700) if there is none. Symbolic links are followed here, once.
//
// It reads all of the file before it answers: a record that was altered, lost or swapped is told
// then, not in the middle of a night. A file of an older format is brought up to date, see migrate.go.
// The error is a [*LockedError], [*NotOursError],
// [*NewerError], [*DamagedError], or a [*FileError] when the system refuses.
func Open(path string, opts ...Option) (*Store, error) {
	o := newOptions(opts)
	real, err := Resolve(path)
	if err != nil {
		return nil, err
	}
	if err := ensure(real, o.createdBy); err != nil {
		return nil, &FileError{"creating", path, err}
	}
	s := &Store{named: path, path: real, patience: o.patience, commit: commit}
	if err := s.open(); err != nil {
		return nil, err
	}
	return s, nil
}

// open locks, verifies and maps the file. It is called with s.mu held, or before anybody else
// knows s.
func (s *Store) open() error {
	f, err := lockFile(s.path, s.patience)
	if err != nil {
		return err
	}
	Sweep(s.path)
	return s.take(f)
}

// take verifies and maps a file that is locked. It owns f, also when it fails.
func (s *Store) take(f *os.File) error {
	leaveNote(s.path)
	found, err := inspectSound(f, s.path)
	if err != nil {
		clearNote(s.path)
		f.Close()
		return err
	}
	if s.db, err = openBolt(s.path, f); err != nil {
		return err
	}
	s.file = f
	s.measure()
	s.head, s.sum, s.notes, s.unsure = found.Head, found.sum, found.Notes, false
	if found.OpenEnd {
		s.notes = append(s.notes, fmt.Sprintf("events after %d may be missing: look whether the last thing that you remember is there", found.Last))
	}
	s.last.Store(found.Last)
	if err := s.migrate(); err != nil {
		return errors.Join(err, s.letGo())
	}
	return nil
}

// openBolt hands a file that is locked and verified to bbolt. What bbolt still finds to complain
// about is damage that the verification does not know.
func openBolt(path string, f *os.File) (db *bolt.DB, err error) {
	o := boltOptions()
	o.OpenFile = func(string, int, os.FileMode) (*os.File, error) { return f, handOver(f) }
	fault := guard(func() error { db, err = bolt.Open(path, 0o600, o); return nil })
	switch {
	case fault != nil:
		unlock(f)
		return nil, &DamagedError{path, []string{fault.Error()}}
	case errors.Is(err, berrors.ErrTimeout):
		return nil, &LockedError{path, holder(path)}
	case err != nil:
		return nil, &FileError{"opening", path, err}
	}
	return db, nil
}

// ours tells whether err is one of this package's, made to be read by people.
func ours(err error) bool {
	var (
		locked  *LockedError
		newer   *NewerError
		foreign *NotOursError
		damaged *DamagedError
		file    *FileError
		moved   *DisplacedError
	)
	return errors.As(err, &locked) || errors.As(err, &newer) || errors.As(err, &foreign) ||
		errors.As(err, &damaged) || errors.As(err, &file) || errors.As(err, &moved) || errors.Is(err, ErrClosed)
}

// lockFile opens a file and takes its lock. A file that was replaced while we waited is let go and
// the one that now has the name taken instead.
func lockFile(path string, patience time.Duration) (*os.File, error) {
	const pause = 10 * time.Millisecond
	for deadline := time.Now().Add(patience); ; {
		f, err := openRegular(path, os.O_RDWR)
		if err != nil {
			return nil, err
		}
		locked, err := tryLock(f)
		if err == nil && locked && sameFile(f, path) {
			return f, nil
		}
		f.Close()
		switch {
		case err != nil:
			return nil, &FileError{"locking", path, err}
		case !time.Now().Before(deadline):
			return nil, &LockedError{Path: path, PID: holder(path)}
		}
		time.Sleep(pause)
	}
}

// sameFile tells whether path still leads to f.
func sameFile(f *os.File, path string) bool {
	a, errA := f.Stat()
	b, errB := os.Stat(path)
	return errA == nil && errB == nil && os.SameFile(a, b)
}
