package main

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"slices"
	"testing"
	"time"
)

// Who waits is told each second what is going on, and nothing of it stays on the screen: neither when
// something is written nor at the end.
func TestWhoWaitsIsToldWhatGoesOn(t *testing.T) {
	tick, told := make(chan time.Time), make(chan struct{})
	var screen bytes.Buffer
	p := &progress{screen: &screen}
	failed := errors.New("no")
	go func() {
		tick <- time.Time{}
		tick <- time.Time{}
		tick <- time.Time{} // taken only when the second line stands
		close(told)
	}()
	err := p.while("planning", tick, func() error {
		<-told
		return failed
	})
	if !errors.Is(err, failed) {
		t.Errorf("the error is %v", err)
	}
	if got, want := screen.String(), "\r\x1b[Kplanning, 1 s\r\x1b[Kplanning, 2 s\r\x1b[Kplanning, 3 s\r\x1b[K"; got != want {
		t.Errorf("the screen got %q, want %q", got, want)
	}
	screen.Reset()
	p.show("planning, 1 s")
	fmt.Fprint(clearing{&screen, p}, "Round 1\n")
	if got, want := screen.String(), "\r\x1b[Kplanning, 1 s\r\x1b[KRound 1\n"; got != want {
		t.Errorf("the screen got %q, want %q", got, want)
	}
	screen.Reset()
	if err := p.while("planning", tick, func() error { return nil }); err != nil || screen.Len() > 0 {
		t.Errorf("what takes no second writes %q (%v)", screen.String(), err)
	}
}

// What is said of commands is said of commands that there are.
func TestProgressKnowsTheCommands(t *testing.T) {
	names := commandNames(newRoot())
	for _, name := range append(slices.Collect(maps.Keys(doing)), talking...) {
		if !slices.Contains(names, name) {
			t.Errorf("there is no command %s", name)
		}
	}
}
