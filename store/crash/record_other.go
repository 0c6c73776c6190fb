//go:build !linux

package crash

import "os/exec"

// Record refuses with [ErrCannotRecord]: it is made for Linux.
func Record(*exec.Cmd, string) (*Trace, error) { return nil, ErrCannotRecord }
