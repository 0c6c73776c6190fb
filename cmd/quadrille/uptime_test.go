package main

import "testing"

// The time since the machine was started is known, and never goes back.
func TestUptimeNeverGoesBack(t *testing.T) {
	last := uptime()
	if last <= 0 {
		t.Fatalf("the machine has been running for %v", last)
	}
	for range 1000 {
		if now := uptime(); now < last {
			t.Fatalf("%v comes after %v", now, last)
		} else {
			last = now
		}
	}
}
