package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
)

// program is what is built.
const program = "./cmd/quadrille"

// small keeps out what the page for phones never uses, or compiles it without copies of short functions: it is served
// without TLS and HTTP/2, yet net/http brings both. So it does with the command line, sheets and settings, which are read or
// made once. That makes the binary 1.0 MB smaller.
var small = append([]string{"-tags", "nethttpomithttp2"}, without(
	"crypto/...", "net/...", "vendor/...",
	"github.com/spf13/...", "github.com/BurntSushi/...", "golang.org/x/text/...",
	"codeberg.org/...", "rsc.io/...", "image/...", "compress/...", "club/quadrille/cmd/...",
)...)

// without are the flags that compile packages without copies of short functions.
func without(patterns ...string) []string {
	flags := make([]string, len(patterns))
	for i, p := range patterns {
		flags[i] = "-gcflags=" + p + "=-l"
	}
	return flags
}

// build makes the binary of a target: static, without paths of this machine and without symbols.
func build(ctx context.Context, from source, t target, to string) error {
	link := fmt.Sprintf("-s -w -buildid= -X main.version=%s -X main.commit=%s", from.version, from.commit)
	flags := append([]string{"build", "-trimpath", "-buildvcs=false", "-ldflags", link, "-o", to}, small...)
	cmd := exec.CommandContext(ctx, "go", append(flags, program)...)
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0", "GOOS="+t.system, "GOARCH="+t.processor, "GOFLAGS=", "GOAMD64=v1", "GOARM64=v8.0")
	cmd.Stdout, cmd.Stderr = os.Stderr, os.Stderr
	if err := cmd.Run(); err != nil {
		return err
	}
	info, err := os.Stat(to)
	if err != nil {
		return err
	}
	if info.Size() > mostBytes {
		return fmt.Errorf("the binary has %d bytes, and %d are the most", info.Size(), mostBytes)
	}
	return nil
}

// pack builds a target, puts it with the papers into an archive, and returns the line of its checksum.
func pack(ctx context.Context, from source, t target, common []entry, work, folder string) (string, error) {
	binary := filepath.Join(work, t.system+"-"+t.processor)
	if err := build(ctx, from, t, binary); err != nil {
		return "", err
	}
	defer os.Remove(binary)
	content, err := os.ReadFile(binary)
	if err != nil {
		return "", err
	}
	name := "quadrille"
	if t.system == "windows" {
		name += ".exe"
	}
	stem := fmt.Sprintf("quadrille-%s-%s-%s", from.version, t.system, t.processor)
	entries := append([]entry{{name, content, 0o755}}, common...)
	return archive(filepath.Join(folder, stem), stem, entries, from.time, t.system == "windows")
}
