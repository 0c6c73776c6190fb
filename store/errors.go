package store

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"syscall"

	"club/quadrille/session"
)

// LockedError tells that another process has the file open.
type LockedError struct {
	Path string
	PID  int // number of that process, 0 if it did not leave it
}

// Error says who has the file open, as far as is known.
func (e *LockedError) Error() string {
	if e.PID == 0 {
		return "this file is open in another Quadrille (its process number is unknown): close that one first"
	}
	return fmt.Sprintf("this file is open in another Quadrille (process %d): close that one first", e.PID)
}

// NewerError tells that a file, or a record in it, is of a newer make than this program. The file
// is sound and left alone.
type NewerError struct {
	Path  string
	What  string // what is newer, such as "file format"
	Found int    // its version
	Known int    // the newest version that this program knows
}

// Error says which versions meet and what to do.
func (e *NewerError) Error() string {
	return fmt.Sprintf("%s was written by a newer Quadrille (%s %d, this one knows %d): use the newer program",
		orThisFile(e.Path), e.What, e.Found, e.Known)
}

// NotOursError tells that a file is none that this program made.
type NotOursError struct {
	Path string
	Why  string // what the file is, such as "it is empty"
}

// Error says why the file is taken for a foreign one.
func (e *NotOursError) Error() string {
	return fmt.Sprintf("%s is no club file: %s", orThisFile(e.Path), e.Why)
}

// DamagedError tells that a file is ours but not as it was written. Nothing was changed.
type DamagedError struct {
	Path   string
	Faults []string // what is damaged, in sentences
}

// Error names the first faults and the way out.
func (e *DamagedError) Error() string {
	const shown = 3
	told := e.Faults
	if len(told) > shown {
		more := len(e.Faults) - shown
		what := "faults"
		if more == 1 {
			what = "fault"
		}
		told = append(told[:shown:shown], fmt.Sprintf("and %d more %s", more, what))
	}
	return fmt.Sprintf("%s is damaged: %s; see all with \"quadrille check\", save what is sound with \"quadrille rescue %s NEW\"",
		orThisFile(e.Path), strings.Join(told, "; "), e.Path)
}

// Is tells that the error is a [session.ErrDamaged].
func (e *DamagedError) Is(target error) bool { return target == session.ErrDamaged }

func orThisFile(path string) string {
	if path == "" {
		return "this file"
	}
	return path
}

// ErrClosed tells that the store was closed.
var ErrClosed = errors.New("the club file is closed")

// FileError tells that the system refused to read or write a file.
type FileError struct {
	Doing string // what was tried, such as "writing"
	Path  string
	Err   error
}

// Error says what was tried, what the system answered and what to do about it.
func (e *FileError) Error() string {
	return fmt.Sprintf("%s %s: %s", e.Doing, e.Path, remedy(e.Err))
}

// Unwrap gives the system's own error.
func (e *FileError) Unwrap() error { return e.Err }

// remedy turns an answer of the system into a sentence with the way out.
func remedy(err error) string {
	switch {
	case answered(err, syscall.ENOSPC, syscall.EDQUOT):
		return "the disk is full: make room, then try again"
	case answered(err, syscall.EFBIG):
		return "the file may not grow any more on this disk: save it elsewhere with a backup"
	case answered(err, syscall.EROFS):
		return "the disk can only be read: make it writable or save elsewhere, then try again"
	case answered(err, syscall.EIO):
		return "the disk failed: save the night elsewhere with a backup, then try again"
	case errors.Is(err, fs.ErrPermission):
		return "permission denied: make the file and its folder writable for you, then try again"
	case errors.Is(err, fs.ErrClosed), answered(err, syscall.EBADF, syscall.ENODEV, syscall.ESTALE, syscall.ENXIO):
		return "the disk is gone: connect it again, then try again"
	case answered(err, syscall.ENOTDIR):
		return "a part of its path is no folder: name another place"
	case answered(err, syscall.EISDIR):
		return "it is a folder: name a file in it"
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file or folder"
	}
	var system syscall.Errno
	if errors.As(err, &system) {
		return system.Error() // the system's words, without those of a library around them
	}
	return err.Error()
}

// answered tells whether the system answered with one of codes. Where bbolt lets a file grow it
// keeps only the text of the answer.
func answered(err error, codes ...syscall.Errno) bool {
	return slices.ContainsFunc(codes, func(code syscall.Errno) bool {
		return errors.Is(err, code) || strings.HasSuffix(err.Error(), ": "+code.Error())
	})
}
