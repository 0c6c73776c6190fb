//go:build !windows

package wire

import (
	"net"
	"os"
	"syscall"
)

// bind makes a socket that nobody else may ever open: it has its name only when it has its mode.
func bind(path string) (net.Listener, error) {
	fresh := path + ".new"
	if info, err := os.Lstat(fresh); err == nil && info.Mode()&os.ModeSocket != 0 {
		_ = os.Remove(fresh) // of a desk that was killed right here
	}
	l, err := net.ListenUnix("unix", &net.UnixAddr{Name: fresh, Net: "unix"})
	if err != nil {
		return nil, err
	}
	l.SetUnlinkOnClose(false)
	s := &socket{Listener: l, path: path}
	if err = os.Chmod(fresh, 0o600); err == nil {
		s.info, err = os.Lstat(fresh)
	}
	if err == nil {
		err = os.Rename(fresh, path)
	}
	if err != nil {
		_ = l.Close()
		_ = os.Remove(fresh)
		return nil, err
	}
	return s, nil
}

// open tells whether others may open or write to a folder, or have made it.
func open(folder os.FileInfo) bool {
	owner, ok := folder.Sys().(*syscall.Stat_t)
	return folder.Mode().Perm()&0o077 != 0 || !ok || int(owner.Uid) != os.Getuid()
}
