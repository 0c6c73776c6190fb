//go:build !windows

package main

import "testing"

// TestDeskOnATerminal drives the real program on a pseudo-terminal.
func TestDeskOnATerminal(t *testing.T) {
	bin := build(t)
	for _, c := range []struct {
		claim string
		test  func(*testing.T, program)
	}{
		{"a whole night, left and reopened in the middle of a round", testWholeNight},
	} {
		t.Run(c.claim, func(t *testing.T) { c.test(t, bin) })
	}
}
