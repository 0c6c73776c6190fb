package main

import (
	"bytes"
	"io"
	"os"
	"runtime/debug"
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

func TestTheVersionNamesTheCommitOnce(t *testing.T) {
	vcs := []debug.BuildSetting{{Key: "vcs.revision", Value: "0123456789abcdef0123456789abcdef01234567"}}
	for _, tt := range []struct {
		version  string
		settings []debug.BuildSetting
		want     string
	}{
		{"v1.2.0", nil, "v1.2.0"}, // go install of a release
		{"v1.2.0", vcs, "v1.2.0 of commit 0123456789ab"},
		{"v0.0.0-20261126010203-0123456789ab", vcs, "v0.0.0-20261126010203-0123456789ab"},
		{"(devel)", vcs, "development version of commit 0123456789ab"},
		{"", nil, "development version"},
	} {
		if got := versionOf(&debug.BuildInfo{Main: debug.Module{Version: tt.version}, Settings: tt.settings}); got != tt.want {
			t.Errorf("%q with %v: %q, not %q", tt.version, tt.settings, got, tt.want)
		}
	}
	if got := withCommit("1.2.0", "0123456789ab"); got != "1.2.0 of commit 0123456789ab" {
		t.Errorf("a linked version is %q", got)
	}
}
