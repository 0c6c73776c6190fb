package main

import (
	"time"

	"golang.org/x/sys/windows"
)

// uptime is the time since the machine was started, its sleep included; nobody sets it.
func uptime() time.Duration { return windows.DurationSinceBoot() }
