package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"club/quadrille/session"
)

// The club file that is open can be removed, moved or replaced by another program at any time, and
// neither bbolt nor the system says a word: what is written then goes to a file that nobody finds
// again. So the store compares its path with what it has open before and after each write, says so at
// once, and can write the whole file back.

// DisplacedError tells that the path of an open file leads to it no more. The file that is open has
// everything that was saved, as long as it is open; nothing more is saved in it.
type DisplacedError struct {
	Path    string // what the file was opened as
	Now     string // where the file is now, "" if that is not known
	Removed bool   // it is nowhere any more
	Taken   bool   // something else stands at Path
}

// Error says what became of the file. The path comes first, so that a narrow screen cuts that.
func (e *DisplacedError) Error() string {
	became := "was moved away"
	switch {
	case e.Removed:
		became = "was removed"
	case e.Now != "":
		became = "was moved to " + e.Now
	}
	if e.Taken {
		return fmt.Sprintf("%s: another file stands there now, the club file %s", e.Path, became)
	}
	return fmt.Sprintf("%s: the club file %s", e.Path, became)
}

// Is tells that the error is a [session.ErrDisplaced].
func (e *DisplacedError) Is(target error) bool { return target == session.ErrDisplaced }

// Gone tells that closing the file would lose all of it.
func (e *DisplacedError) Gone() bool { return e.Removed }

// Resolve gives the file that a path leads to: symbolic links are followed, so that what replaces the
// file replaces it and not the link. A path where nothing stands yet is given as it is; one that leads
// nowhere is refused.
func Resolve(path string) (string, error) {
	info, err := os.Lstat(path)
	if err != nil || info.Mode()&fs.ModeSymlink == 0 {
		return path, nil
	}
	found, err := filepath.EvalSymlinks(path)
	if err != nil {
		to, _ := os.Readlink(path)
		return "", fmt.Errorf("%s is a link to %s, and nothing is there: connect that disk, or remove the link", path, to)
	}
	return found, nil
}

// InPlace tells whether the path that the store was opened with still leads to the open file, and that is
// whole as it was. The error is a [*DisplacedError] if it does not, a [*DamagedError] if another program
// cut the file short, and a [*FileError] if the system does not tell. Of a file that could not be opened
// again after a failure it is what Append says.
func (s *Store) InPlace() error {
	s.mu.RLock()
	defer s.mu.RUnlock()
	if s.file == nil {
		return s.failed
	}
	if s.cutShort() { // which is harmless where nothing stood
		if _, err := inspectSound(s.file, s.named); err != nil {
			return err
		}
	}
	return s.inPlace()
}

// cutShort tells whether the open file has become shorter, which bbolt never makes it. It is called with
// s.mu held.
func (s *Store) cutShort() bool {
	if s.file == nil {
		return false
	}
	info, err := s.file.Stat()
	return err == nil && info.Size() < s.size
}

// measure notes how long the open file is. It is called with s.mu held.
func (s *Store) measure() {
	if info, err := s.file.Stat(); err == nil {
		s.size = info.Size()
	}
}

// inPlace is InPlace with s.mu held.
func (s *Store) inPlace() error {
	if s.file == nil {
		return nil // the next write opens it, or tells that it cannot
	}
	mine, err := s.file.Stat()
	if err != nil {
		return nil // the disk itself is gone, which the next write tells
	}
	there, err := os.Stat(s.named)
	if err == nil && os.SameFile(mine, there) {
		return nil
	}
	if err != nil && !errors.Is(err, fs.ErrNotExist) && !errors.Is(err, syscall.ENOTDIR) {
		return &FileError{"looking for", s.named, err}
	}
	_, nothing := os.Lstat(s.named)
	return &DisplacedError{
		Path: s.named, Now: whereNow(s.file, mine), Removed: links(mine) == 0, Taken: nothing == nil,
	}
}

// whereNow is the path that an open file has now, "" where the system does not tell.
func whereNow(f *os.File, mine os.FileInfo) string {
	path, err := os.Readlink(fmt.Sprintf("/proc/self/fd/%d", f.Fd()))
	if err != nil {
		return ""
	}
	if there, err := os.Stat(path); err != nil || !os.SameFile(mine, there) {
		return ""
	}
	return path
}

// PutBack writes all of the open file to the path that it was opened with, if another program removed,
// moved or replaced it, and goes on with that one. What stands there by now is moved to the name aside,
// which is "" if nothing stood there. Without need it does nothing.
//
// A file that another Quadrille has open there is not touched: the error is a [*LockedError] then.
func (s *Store) PutBack(now time.Time) (aside string, err error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed {
		return "", ErrClosed
	}
	err = s.inPlace()
	var displaced *DisplacedError
	if !errors.As(err, &displaced) {
		return "", err
	}
	place := s.place()
	fresh, err := s.copyOpen(place)
	if err != nil {
		return "", err
	}
	defer os.Remove(fresh)
	f, err := lockFile(fresh, 0)
	if err != nil {
		return "", err
	}
	if aside, err = moveAside(place, now); err == nil {
		err = nameNew(fresh, place)
	}
	if err != nil {
		f.Close()
		return aside, err
	}
	s.path = place
	// What the close complains about is a file that was given up already.
	_ = s.closeFile()
	return aside, s.take(f)
}

// place is where a file that lost its place belongs: to where the links led when it was opened, or to
// the path itself if that link leads elsewhere by now.
func (s *Store) place() string {
	mine, errA := s.file.Stat()
	there, errB := os.Stat(s.path)
	if errA == nil && errB == nil && os.SameFile(mine, there) {
		return s.named
	}
	return s.path
}

// copyOpen copies the open file, checked, to a passing name beside to, whose folder is made if it is
// gone too.
func (s *Store) copyOpen(to string) (string, error) {
	if err := os.MkdirAll(filepath.Dir(to), 0o700); err != nil {
		return "", &FileError{"making", filepath.Dir(to), err}
	}
	fresh, _, err := copyBeside(s.file, s.named, to)
	if err != nil {
		return "", err
	}
	r, err := checkCopy(fresh, s.named)
	if err == nil && r.Last < s.Last() {
		err = &DamagedError{s.named, []string{fmt.Sprintf("it ends with event %d, but event %d was saved", r.Last, s.Last())}}
	}
	if err != nil {
		os.Remove(fresh)
		return "", err
	}
	return fresh, nil
}

// moveAside gives what stands at a path another name beside it, and tells that name; "" if nothing
// stands there.
func moveAside(path string, now time.Time) (string, error) {
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	if err == nil && info.Mode().IsRegular() {
		err = mustBeFree(path)
	}
	if err != nil {
		return "", err
	}
	aside := AsideName(path, now)
	if err := vacant(aside); err != nil {
		return "", err
	}
	if err := os.Rename(path, aside); err != nil {
		return "", &FileError{"moving", path, err}
	}
	return aside, nil
}

// mustBeFree refuses a file that another Quadrille has open.
func mustBeFree(path string) error {
	f, err := openRegular(path, os.O_RDWR)
	if err != nil {
		return nil // what cannot be opened cannot be open in a Quadrille of the same user either
	}
	defer f.Close()
	if locked, err := tryLock(f); err == nil && !locked {
		return &LockedError{path, holder(path)}
	}
	return nil
}

// AsideName is where a file goes that makes room for another at a moment.
func AsideName(path string, at time.Time) string {
	ext := filepath.Ext(path)
	return strings.TrimSuffix(path, ext) + "-before-" + at.Format("20060102T150405") + ext
}
