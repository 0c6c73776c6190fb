//go:build unix

package store

import (
	"errors"
	"os"
	"syscall"
)

// tryLock takes the lock that bbolt takes on its file, without waiting. The lock belongs to the
// open file: bbolt, which is handed the same one, finds it taken already and goes on. false means
// that another process has it.
func tryLock(f *os.File) (bool, error) {
	err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	if errors.Is(err, syscall.EWOULDBLOCK) {
		return false, nil
	}
	return err == nil, err
}

// handOver prepares a locked file for bbolt.
func handOver(*os.File) error { return nil }

// unlock gives a lock back that closing the file would not: a mapping may still keep it open.
func unlock(f *os.File) { syscall.Flock(int(f.Fd()), syscall.LOCK_UN) }

// alive tells whether a process of this number runs.
func alive(pid int) bool {
	err := syscall.Kill(pid, 0)
	return err == nil || errors.Is(err, syscall.EPERM)
}

// links is how many names a file has.
func links(info os.FileInfo) int {
	if s, ok := info.Sys().(*syscall.Stat_t); ok {
		return int(s.Nlink)
	}
	return -1
}

// syncDir makes names that were added to or taken from a folder durable.
func syncDir(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer d.Close()
	// Some file systems cannot flush a folder and need not.
	if err := d.Sync(); err != nil && !errors.Is(err, syscall.EINVAL) && !errors.Is(err, syscall.ENOTSUP) {
		return err
	}
	return nil
}
