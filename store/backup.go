package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"club/quadrille/store/pages"
)

// Backup copies the file to a new one, whole and as of the last finished action, flushes it, reads
// all of the copy, and only then gives it its name. It never replaces a file.
func (s *Store) Backup(to string) error {
	s.mu.RLock()
	defer s.mu.RUnlock()
	if s.file == nil {
		_, err := Backup(s.path, to)
		return err
	}
	if err := vacant(to); err != nil {
		return err
	}
	// The open file itself is copied: it has everything even when its path leads elsewhere.
	fresh, _, err := copyBeside(s.file, s.path, to)
	if err != nil {
		return err
	}
	defer os.Remove(fresh)
	if _, err := checkCopy(fresh, s.path); err != nil {
		return err
	}
	return nameNew(fresh, to)
}

// Backup copies the club file at from as [Store.Backup] does, whether another process has it open
// or not. The report is about the copy.
func Backup(from, to string) (Report, error) {
	if err := vacant(to); err != nil {
		return Report{}, err
	}
	var r Report
	err := stably(from, func(f *os.File) (bool, error) {
		fresh, moved, err := copyBeside(f, from, to)
		if err != nil || moved {
			return moved, err
		}
		defer os.Remove(fresh)
		if r, err = checkCopy(fresh, from); err != nil {
			return false, err
		}
		r.Path = to
		return false, nameNew(fresh, to)
	})
	return r, err
}

// copyBeside copies the used part of f into a file of a passing name in to's folder. moved tells
// that another process wrote meanwhile; there is no copy then.
func copyBeside(f *os.File, from, to string) (name string, moved bool, err error) {
	info, err := f.Stat()
	if err != nil {
		return "", false, &FileError{"reading", from, err}
	}
	file, err := pages.Open(f, info.Size())
	if err != nil {
		_, err := inspectSound(f, from) // says it in the words for people
		return "", false, err
	}
	out, err := createBeside(to)
	if err != nil {
		return "", false, &FileError{"writing", to, err}
	}
	used := int64(file.Pages()) * int64(file.PageSize())
	_, err = io.Copy(out, io.NewSectionReader(f, 0, used))
	if err = errors.Join(err, out.Sync(), out.Close()); err != nil {
		err = &FileError{"writing", to, err}
	}
	if moved = file.Moved(); err != nil || moved {
		os.Remove(out.Name())
	}
	return out.Name(), moved, err
}

// checkCopy reads all of a copy. What is wrong with it is told of the original.
func checkCopy(name, original string) (Report, error) {
	f, err := os.Open(name)
	if err != nil {
		return Report{}, &FileError{"reading", name, err}
	}
	defer f.Close()
	return inspectSound(f, original)
}

// vacant makes sure that there is no file of a name.
func vacant(name string) error {
	_, err := os.Lstat(name)
	switch {
	case err == nil:
		return fmt.Errorf("%s is there already: choose another name", name)
	case !errors.Is(err, fs.ErrNotExist):
		return &FileError{"writing", name, err}
	}
	return nil
}

// nameNew gives a finished file its name, durably, unless that name was taken meanwhile.
func nameNew(fresh, name string) error {
	err := linkNew(fresh, name)
	if err == nil {
		err = syncDir(filepath.Dir(name))
	}
	switch {
	case errors.Is(err, fs.ErrExist):
		return vacant(name)
	case err != nil:
		return &FileError{"writing", name, err}
	}
	return nil
}
