package store

import (
	"fmt"
	"os"
	"time"
)

// A file that another process writes can be read all the same: bbolt never writes to a page that
// its newest state uses. What was read while the newest state stayed the newest is that state,
// whole. When it did not, the read begins anew.

// stably calls read with the file at path until it says that nobody wrote meanwhile.
func stably(path string, read func(*os.File) (moved bool, err error)) error {
	const tries = 40
	for try := range tries {
		moved, err := tryRead(path, read)
		if err != nil || !moved {
			return err
		}
		time.Sleep(time.Duration(try) * time.Millisecond)
	}
	return fmt.Errorf("%s is written to without pause: try again", path)
}

func tryRead(path string, read func(*os.File) (bool, error)) (bool, error) {
	f, err := openRegular(path, os.O_RDONLY)
	if err != nil {
		return false, err
	}
	defer f.Close()
	return read(f)
}

// inspectShared inspects a file that another process may be writing. It calls begin before each
// attempt for the function that takes the records.
func inspectShared(path string, begin func() func(frame)) (Report, error) {
	var r Report
	err := stably(path, func(f *os.File) (bool, error) {
		var err error
		r, err = inspect(f, path, begin())
		return r.moved, err
	})
	return r, err
}
