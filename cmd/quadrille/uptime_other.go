//go:build !linux && !darwin && !windows

package main

import "time"

// uptime is the time since the program was started, as far as the system lets it pass in sleep.
func uptime() time.Duration { return time.Since(began) }

// began is when the program was started.
var began = time.Now()
