package main

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

// TestTheLargestBinaryIsSmallEnough builds for the two systems whose binaries are the largest; build refuses those
// that are too large.
func TestTheLargestBinaryIsSmallEnough(t *testing.T) {
	if os.Getenv("QUADRILLE_LONG") == "" {
		t.Skip("builds the program for other systems: QUADRILLE_LONG=1 runs it")
	}
	t.Chdir(filepath.Join("..", ".."))
	for _, largest := range []target{{"windows", "amd64"}, {"darwin", "amd64"}} {
		to := filepath.Join(t.TempDir(), "quadrille")
		if err := build(t.Context(), source{version: "1.0", commit: "0123456789ab", time: time.Unix(0, 0)}, largest, to); err != nil {
			t.Errorf("%s: %v", largest, err)
			continue
		}
		info, err := os.Stat(to)
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%s: %d bytes", largest, info.Size())
	}
}
