package main

import (
	"bytes"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/creack/pty"
)

// A terminal that never answers must not delay anything: Bubble Tea would ask it for its background
// colour and wait five seconds. So nothing but the version may be written there.
func TestVersionAsksTheTerminalNothing(t *testing.T) {
	cmd := command(t, "--version")
	cmd.Env = append(os.Environ(), "TERM=xterm-256color", "COLORFGBG=")
	terminal, err := pty.Start(cmd)
	if err != nil {
		t.Skipf("no pseudo-terminal here: %v", err)
	}
	defer terminal.Close()
	var screen bytes.Buffer
	_, _ = io.Copy(&screen, terminal) // ends with an error when the process does
	if err := cmd.Wait(); err != nil {
		t.Fatal(err)
	}
	if got := screen.String(); !strings.HasPrefix(got, "quadrille ") || strings.Contains(got, "\x1b") {
		t.Fatalf("the terminal shows %q", got)
	}
}
