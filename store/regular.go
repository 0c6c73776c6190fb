package store

import (
	"io/fs"
	"os"
)

// openRegular opens a file that is there, if it is a plain one: whoever opens a pipe waits for ever,
// and a device has no end.
func openRegular(path string, flag int) (*os.File, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, &FileError{"opening", path, err}
	}
	if what := oddity(info.Mode()); what != "" {
		return nil, &NotOursError{path, what}
	}
	f, err := os.OpenFile(path, flag, 0)
	if err != nil {
		return nil, &FileError{"opening", path, err}
	}
	return f, nil
}

// oddity says what stands at a path that is no plain file, "" for a plain one.
func oddity(mode fs.FileMode) string {
	switch {
	case mode.IsRegular():
		return ""
	case mode.IsDir():
		return "it is a folder"
	case mode&fs.ModeNamedPipe != 0:
		return "it is a pipe"
	case mode&fs.ModeSocket != 0:
		return "it is a socket"
	}
	return "it is a device"
}
