package main

import (
	"bytes"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"
)

// A terminal that never answers must not delay anything: Bubble Tea would wait five seconds for
// its background colour.
func TestVersionIsQuickOnASilentTerminal(t *testing.T) {
	const limit = 50 * time.Millisecond
	best := time.Hour
	for range 7 {
		cmd := command(t, "--version")
		cmd.Env = append(os.Environ(), "TERM=xterm-256color", "COLORFGBG=")
		start := time.Now()
		terminal, err := pty.Start(cmd)
		if err != nil {
			t.Skipf("no pseudo-terminal here: %v", err)
		}
		var screen bytes.Buffer
		_, _ = io.Copy(&screen, terminal) // ends with an error when the process does
		if err := cmd.Wait(); err != nil {
			t.Fatal(err)
		}
		best = min(best, time.Since(start))
		if err := terminal.Close(); err != nil {
			t.Fatal(err)
		}
		if got := screen.String(); !strings.HasPrefix(got, "quadrille ") || strings.Contains(got, "\x1b") {
			t.Fatalf("the terminal shows %q", got)
		}
	}
	t.Logf("best of 7: %v", best)
	if best > limit {
		t.Errorf("--version takes %v, more than %v", best, limit)
	}
}
