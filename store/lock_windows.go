package store

import (
	"errors"
	"math"
	"os"

	"golang.org/x/sys/windows"
)

// bboltByte is the one byte, far behind any content, that bbolt locks.
func bboltByte() *windows.Overlapped {
	return &windows.Overlapped{Offset: math.MaxUint32, OffsetHigh: math.MaxUint32}
}

// tryLock takes the lock that bbolt takes on its file, without waiting. false means that another
// process has it.
func tryLock(f *os.File) (bool, error) {
	err := windows.LockFileEx(windows.Handle(f.Fd()),
		windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, bboltByte())
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return false, nil
	}
	return err == nil, err
}

// handOver prepares a locked file for bbolt: Windows lets nobody lock a byte twice, so that bbolt
// has to take the lock anew. Should another process be quicker, bbolt tells.
func handOver(f *os.File) error {
	return windows.UnlockFileEx(windows.Handle(f.Fd()), 0, 1, 0, bboltByte())
}

// unlock gives a lock back that closing the file would not: a mapping may still keep it open.
func unlock(f *os.File) { windows.UnlockFileEx(windows.Handle(f.Fd()), 0, 1, 0, bboltByte()) }

// alive tells whether a process of this number runs.
func alive(pid int) bool {
	p, err := os.FindProcess(pid)
	if err != nil {
		return false
	}
	p.Release()
	return true
}

// links is -1, unknown: Windows lets nobody remove a file that is open.
func links(os.FileInfo) int { return -1 }

// syncDir does nothing: Windows keeps names durable by itself.
func syncDir(string) error { return nil }
