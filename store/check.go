package store

import (
	"errors"
	"fmt"
	"os"

	bolt "go.etcd.io/bbolt"
)

// Check reads all of the file at path and says what is wrong with it: the structure of its pages,
// its head, and the checksum, the number and the chain of every record. It changes nothing and
// works while another process has the file open; it then looks at the last action that was
// finished. Damage is told in the report. The error is for a file that cannot be looked at: a
// [*NotOursError], [*NewerError] or [*FileError].
func Check(path string) (Report, error) {
	r, err := inspectShared(path, func() func(frame) { return func(frame) {} })
	if err != nil || !r.Sound() || len(r.Notes) > 0 {
		return r, err // bbolt's own check would trip over a damaged header
	}
	faults, err := boltCheck(path)
	r.Faults = append(r.Faults, faults...)
	var locked *LockedError
	if errors.As(err, &locked) {
		r.Notes = append(r.Notes, fmt.Sprintf("the file is in use (process %d), so that bbolt's own check was left out", locked.PID))
		return r, nil
	}
	return r, err
}

// boltCheck lets bbolt check a file of its own that pages found no fault with. bbolt does that in
// a goroutine of its own, where nobody could catch a panic: it must not see a damaged file.
func boltCheck(path string) (faults []string, err error) {
	f, err := lockReadOnly(path)
	if err != nil {
		return nil, err
	}
	o := boltOptions()
	o.ReadOnly = true
	o.OpenFile = func(string, int, os.FileMode) (*os.File, error) { return f, handOver(f) }
	db, err := bolt.Open(path, 0o600, o)
	if err != nil {
		return nil, &FileError{"checking", path, err}
	}
	defer db.Close()
	err = db.View(func(tx *bolt.Tx) error {
		for fault := range tx.Check() {
			faults = append(faults, fault.Error())
		}
		return nil
	})
	return faults, err
}

// lockReadOnly opens a file for reading and takes its lock, at once or not at all.
func lockReadOnly(path string) (*os.File, error) {
	f, err := openRegular(path, os.O_RDONLY)
	if err != nil {
		return nil, err
	}
	locked, err := tryLock(f)
	if err == nil && locked {
		return f, nil
	}
	f.Close()
	if err != nil {
		return nil, &FileError{"locking", path, err}
	}
	return nil, &LockedError{path, holder(path)}
}
