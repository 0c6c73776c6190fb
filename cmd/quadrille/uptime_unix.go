//go:build linux || darwin

package main

import (
	"time"

	"golang.org/x/sys/unix"
)

// uptime is the time since the machine was started, its sleep included. Nobody sets it, and unlike Go's
// own monotonic clock on these systems it goes on while the laptop's lid is shut, as people go on playing.
func uptime() time.Duration {
	var t unix.Timespec
	if err := unix.ClockGettime(sleepless, &t); err != nil {
		return time.Since(began)
	}
	return time.Duration(t.Nano())
}

// began is when the program was started.
var began = time.Now()
