package wire

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"time"

	"github.com/adrg/xdg"
)

// maxPath is the longest path of a socket on every system, with room for what listen puts behind it: the
// systems keep it in 104 (macOS) or 108 bytes.
const maxPath = 95

// place is where the socket of a club file may be.
type place struct {
	path   string
	folder string // is made, and must be open to nobody else; empty for the folder of the club file
}

// places lists them, the usual one first: beside the club file, and, where that path is too long or the disk
// knows no sockets, in a folder of this user's own.
func places(clubFile string) []place {
	if at, err := filepath.Abs(clubFile); err == nil {
		clubFile = at
	}
	sum := sha256.Sum256([]byte(clubFile))
	name := hex.EncodeToString(sum[:8]) + ".sock"
	run := filepath.Join(xdg.RuntimeDir, "quadrille")
	temporary := filepath.Join(os.TempDir(), fmt.Sprintf("quadrille-%d", os.Getuid()))
	all := []place{{path: clubFile + ".sock"}, {filepath.Join(run, name), run}, {filepath.Join(temporary, name), temporary}}
	var out []place
	for _, p := range all {
		if len(p.path) <= maxPath {
			out = append(out, p)
		}
	}
	return out
}

// private refuses a folder of our own that others may write to: they could put a socket of theirs there.
func (p place) private() error {
	if p.folder == "" {
		return nil
	}
	info, err := os.Lstat(p.folder)
	if err != nil {
		return err
	}
	if !info.IsDir() || open(info) {
		return fmt.Errorf("%s is no folder that only you may open", p.folder)
	}
	return nil
}

// Listen takes the socket of a club file for the desk that has the file open. What a desk that was killed
// left there is taken away, if nobody answers any more.
func Listen(clubFile string) (net.Listener, error) {
	err := fmt.Errorf("the path of %s is too long", clubFile)
	for _, p := range places(clubFile) {
		var l net.Listener
		if l, err = p.listen(); err == nil {
			return l, nil
		}
		if errors.Is(err, errAnswered) {
			break // the boards are with another desk
		}
	}
	return nil, fmt.Errorf("boards cannot follow this desk: %w", err)
}

func (p place) listen() (net.Listener, error) {
	if p.folder != "" {
		if err := os.MkdirAll(p.folder, 0o700); err != nil {
			return nil, err
		}
		if err := p.private(); err != nil {
			return nil, err
		}
	}
	if err := p.clear(); err != nil {
		return nil, err
	}
	return bind(p.path)
}

// errAnswered tells that somebody listens at the socket already.
var errAnswered = errors.New("another desk answers")

// clear removes a socket at which nobody answers, and nothing else.
func (p place) clear() error {
	info, err := os.Lstat(p.path)
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	if info.Mode()&os.ModeSocket == 0 {
		return fmt.Errorf("%s is there and is no socket: move it away", p.path)
	}
	const answer = time.Second
	c, err := net.DialTimeout("unix", p.path, answer)
	var late net.Error
	switch {
	case err == nil:
		_ = c.Close()
		return fmt.Errorf("%w at %s", errAnswered, p.path)
	case errors.As(err, &late) && late.Timeout():
		return fmt.Errorf("somebody holds %s", p.path)
	}
	return os.Remove(p.path)
}

// socket is a listener that takes its own file away, and never one that another desk has put in its place.
type socket struct {
	net.Listener
	path string
	info os.FileInfo
}

// Close implements net.Listener.
func (s *socket) Close() error {
	err := s.Listener.Close()
	if now, gone := os.Lstat(s.path); gone == nil && os.SameFile(now, s.info) {
		err = errors.Join(err, os.Remove(s.path))
	}
	return err
}

// Addr implements net.Listener: the name under which the socket is found.
func (s *socket) Addr() net.Addr { return &net.UnixAddr{Name: s.path, Net: "unix"} }
