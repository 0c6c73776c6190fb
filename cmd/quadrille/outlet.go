package main

import (
	"bufio"
	"errors"
	"io"
	"io/fs"
	"os"
	"syscall"
)

// outlet is the standard output. It remembers the first failure, so that no command ends as if what it
// wrote had arrived: not even one that only shows its help.
type outlet struct {
	io.Writer
	line   *progress // what is taken back before anything is written
	failed error
}

// Write implements io.Writer.
func (o *outlet) Write(text []byte) (int, error) {
	o.line.clear()
	n, err := o.Writer.Write(text)
	if err != nil && o.failed == nil {
		o.failed = err
	}
	return n, err
}

// unwrapped is what is behind an outlet: screens ask it whether it is a terminal.
func unwrapped(w io.Writer) io.Writer {
	if o, ok := w.(*outlet); ok {
		return o.Writer
	}
	return w
}

// because says in words why the system refused something.
func because(err error) string {
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return "the disk is full"
	case errors.Is(err, bufio.ErrTooLong):
		return "a line has no end"
	case errors.Is(err, syscall.EROFS):
		return "the disk can only be read"
	case errors.Is(err, syscall.EISDIR):
		return "it is a folder"
	case errors.Is(err, syscall.ENOTDIR):
		return "a part of its path is no folder"
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file or folder"
	case errors.Is(err, fs.ErrPermission):
		return "you may not: its owner must allow it"
	case errors.Is(err, os.ErrClosed), errors.Is(err, syscall.EBADF):
		return "it is closed"
	case errors.Is(err, syscall.EPIPE):
		return "the program that reads it has ended"
	}
	var system syscall.Errno
	if errors.As(err, &system) {
		return system.Error() // the system's own words, without those of a library around them
	}
	return err.Error()
}
