package store

import (
	"errors"
	"os"
	"time"

	bolt "go.etcd.io/bbolt"
)

// Open opens the data file at path for this process alone, and makes it (mode 0600, its folder
// 0700) if there is none.
//
// It reads all of the file before it answers: a record that was altered, lost or swapped is told
// then, not in the middle of a night. The error is a [*LockedError], [*NotOursError],
// [*NewerError], [*DamagedError], or a [*FileError] when the system refuses.
func Open(path string, opts ...Option) (*Store, error) {
	o := newOptions(opts)
	if err := ensure(path, o.createdBy); err != nil {
		return nil, &FileError{"creating", path, err}
	}
	s := &Store{path: path, patience: o.patience}
	if err := s.open(); err != nil {
		return nil, err
	}
	return s, nil
}

// open locks, verifies and maps the file. It is called with s.mu held, or before anybody else
// knows s.
func (s *Store) open() error {
	var v verdict
	bo := boltOptions()
	bo.OpenFile = func(name string, _ int, _ os.FileMode) (*os.File, error) {
		f, err := lockFile(name, s.patience)
		if err != nil {
			return nil, err
		}
		leaveNote(s.path)
		if v, err = verifyFile(f, name); err != nil {
			clearNote(s.path)
			f.Close()
			return nil, err
		}
		return f, handOver(f)
	}
	db, err := openBolt(s.path, bo)
	if err != nil {
		return err
	}
	s.db, s.head, s.sum = db, v.head, v.sum
	s.last.Store(v.last)
	s.unsure = false
	return nil
}

// openBolt opens a file that was verified. What bbolt still finds to complain about is damage that
// the verification does not know.
func openBolt(path string, bo *bolt.Options) (db *bolt.DB, err error) {
	fault := guard(func() error { db, err = bolt.Open(path, 0o600, bo); return nil })
	switch {
	case fault != nil:
		return nil, &DamagedError{Path: path, Faults: []string{fault.Error()}}
	case errors.Is(err, bolt.ErrTimeout):
		return nil, &LockedError{Path: path, PID: holder(path)}
	case err != nil && !ours(err):
		return nil, &FileError{"opening", path, err}
	}
	return db, err
}

// ours tells whether err is one of this package's, made to be read by people.
func ours(err error) bool {
	var (
		locked  *LockedError
		newer   *NewerError
		foreign *NotOursError
		damaged *DamagedError
		file    *FileError
	)
	return errors.As(err, &locked) || errors.As(err, &newer) || errors.As(err, &foreign) ||
		errors.As(err, &damaged) || errors.As(err, &file) || errors.Is(err, ErrClosed)
}

// lockFile opens a file and takes its lock. A file that was replaced while we waited is let go and
// the one that now has the name taken instead.
func lockFile(path string, patience time.Duration) (*os.File, error) {
	const pause = 10 * time.Millisecond
	for deadline := time.Now().Add(patience); ; {
		f, err := os.OpenFile(path, os.O_RDWR, 0)
		if err != nil {
			return nil, &FileError{"opening", path, err}
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
