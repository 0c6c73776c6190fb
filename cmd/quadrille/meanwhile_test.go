package main

import (
	"bytes"
	"errors"
	"testing"
	"time"
)

// Who waits is told each second what is going on, and nothing of it stays on the screen.
func TestWhoWaitsIsToldWhatGoesOn(t *testing.T) {
	tick, told := make(chan time.Time), make(chan struct{})
	var screen bytes.Buffer
	failed := errors.New("no")
	go func() {
		tick <- time.Time{}
		tick <- time.Time{}
		close(told)
	}()
	err := tell(&screen, tick, "planning", func() error { <-told; return failed })
	if !errors.Is(err, failed) {
		t.Errorf("the error is %v", err)
	}
	if got, want := screen.String(), "\r\x1b[Kplanning, 1 s\r\x1b[Kplanning, 2 s\r\x1b[K"; got != want {
		t.Errorf("the screen got %q, want %q", got, want)
	}
	screen.Reset()
	if err := tell(&screen, tick, "planning", func() error { return nil }); err != nil || screen.Len() > 0 {
		t.Errorf("what takes no second writes %q (%v)", screen.String(), err)
	}
}
