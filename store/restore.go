package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"
)

// Restore puts a copy of the club file at from, checked, in the place of the one at to, or of the one
// that a symbolic link there leads to. What was at
// to, sound or not, is there afterwards under the name kept, which must not be taken. The file at
// to must not be open anywhere.
func Restore(from, to, kept string) error {
	if err := vacant(kept); err != nil {
		return err
	}
	to, err := Resolve(to)
	if err != nil {
		return err
	}
	Sweep(to)
	old, err := lockFile(to, 500*time.Millisecond)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if err := os.MkdirAll(filepath.Dir(to), 0o700); err != nil { // a new laptop has no folder yet
			return &FileError{"making", filepath.Dir(to), err}
		}
		_, err := Backup(from, to)
		return err
	case err != nil:
		return err
	}
	defer old.Close()
	return stably(from, func(f *os.File) (bool, error) {
		fresh, moved, err := copyBeside(f, from, to)
		if err != nil || moved {
			return moved, err
		}
		defer os.Remove(fresh)
		if _, err := checkCopy(fresh, from); err != nil {
			return false, err
		}
		return false, exchange(fresh, to, kept)
	})
}

// exchange gives the file at to the name kept as well, and then its own name to fresh. A crash in
// between leaves the old file under both names.
func exchange(fresh, to, kept string) error {
	err := linkNew(to, kept)
	if err == nil {
		err = syncDir(filepath.Dir(kept))
	}
	if err == nil {
		err = os.Rename(fresh, to)
	}
	if err == nil {
		err = syncDir(filepath.Dir(to))
	}
	if err != nil {
		return &FileError{"replacing", to, err}
	}
	return nil
}
