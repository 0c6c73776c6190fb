// Command release builds what people download: for each system one archive with a static binary, the
// README, the licences of everything in it, manual pages and shell completions, and a file of checksums.
// Equal commits give equal bytes, wherever the checkout lies.
//
//	go run ./cmd/release -version 1.2.0 /tmp/quadrille-1.2.0
//
// It is a few lines of Go and no release tool, since all that is asked for is a build, an archive and a
// checksum, and a machine with only Go must be able to do it.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// target is a system and a processor.
type target struct{ system, processor string }

func (t target) String() string { return t.system + "/" + t.processor }

// targets are what is built.
var targets = []target{
	{"linux", "amd64"}, {"linux", "arm64"}, {"darwin", "amd64"}, {"darwin", "arm64"}, {"windows", "amd64"}, {"windows", "arm64"},
}

// mostBytes is how large a binary may get: people download it in a hall.
const mostBytes = 20_000_000

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	version := flag.String("version", "", "the version that the binaries name (default: the commit)")
	only := flag.String("only", "", "one target such as linux/amd64 (default: all six)")
	flag.Usage = func() {
		fmt.Fprintln(flag.CommandLine.Output(), "usage: go run ./cmd/release [-version 1.2.0] [-only linux/amd64] FOLDER\nFOLDER is made, and must not be there before.")
		flag.PrintDefaults()
	}
	flag.Parse()
	if flag.NArg() != 1 {
		flag.Usage()
		os.Exit(2)
	}
	if err := run(ctx, *version, *only, flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, "release:", err)
		os.Exit(1)
	}
}

// source is the commit that is built.
type source struct {
	version string
	commit  string // "" outside of a repository
	time    time.Time
}

func run(ctx context.Context, version, only, folder string) error {
	chosen, err := choose(only)
	if err != nil {
		return err
	}
	from, err := sourceOf(ctx, version)
	if err != nil {
		return err
	}
	if err := os.Mkdir(folder, 0o755); err != nil {
		return err
	}
	work, err := os.MkdirTemp("", "quadrille-release-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	common, err := papers(ctx, work)
	if err != nil {
		return err
	}
	var sums []string
	for _, t := range chosen {
		sum, err := pack(ctx, from, t, common, work, folder)
		if err != nil {
			return fmt.Errorf("%s: %w", t, err)
		}
		sums = append(sums, sum)
		fmt.Println(sum)
	}
	return os.WriteFile(filepath.Join(folder, "SHA256SUMS"), []byte(strings.Join(sums, "\n")+"\n"), 0o644)
}

// choose is the target of that name, or all.
func choose(only string) ([]target, error) {
	if only == "" {
		return targets, nil
	}
	for _, t := range targets {
		if t.String() == only {
			return []target{t}, nil
		}
	}
	return nil, fmt.Errorf("there is no target %s: choose one of %v", only, targets)
}

// sourceOf reads which commit is checked out. What is not committed cannot be built again by anybody.
func sourceOf(ctx context.Context, version string) (s source, err error) {
	changed, err := output(ctx, "git", "status", "--porcelain")
	if err != nil {
		return s, err
	}
	if changed != "" {
		return s, errors.New("something is not committed: commit it first, so that others can build the same")
	}
	head, err := output(ctx, "git", "log", "-1", "--format=%H %ct")
	if err != nil {
		return s, err
	}
	hash, seconds, _ := strings.Cut(head, " ")
	at, err := strconv.ParseInt(seconds, 10, 64)
	if err != nil {
		return s, fmt.Errorf("git tells the time of the commit as %q", seconds)
	}
	if version == "" {
		version = "commit-" + hash[:12]
	}
	return source{version, hash[:12], time.Unix(at, 0).UTC()}, nil
}

// output runs a command and returns what it printed, without the last line's end.
func output(ctx context.Context, name string, args ...string) (string, error) {
	cmd := exec.CommandContext(ctx, name, args...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return "", fmt.Errorf("%s %s: %w", name, strings.Join(args, " "), err)
	}
	return strings.TrimRight(string(out), "\n"), nil
}
