package wire

import (
	"net"
	"os"
)

// bind makes a socket. Who may open it follows from the folder, which on Windows is the user's own.
func bind(path string) (net.Listener, error) {
	l, err := net.ListenUnix("unix", &net.UnixAddr{Name: path, Net: "unix"})
	if err != nil {
		return nil, err
	}
	l.SetUnlinkOnClose(false)
	info, err := os.Lstat(path)
	if err != nil {
		_ = l.Close()
		return nil, err
	}
	return &socket{Listener: l, path: path, info: info}, nil
}

// open tells whether others may open or write to a folder: Windows keeps that in lists that its modes do not
// show, and the folders used here are the user's own.
func open(os.FileInfo) bool { return false }
