package main

import (
	"bytes"
	"context"
	"embed"
	"errors"
	"fmt"
	"os/exec"
	"strconv"
	"strings"
	"time"
)

//go:embed models/*.mzn
var models embed.FS

// solver is an installed MiniZinc with Gecode.
type solver struct {
	path    string
	version string // what it says of itself, on one line
}

// findSolver looks for the solver, and says how to install it if it is not there.
func findSolver(ctx context.Context) (solver, error) {
	path, err := exec.LookPath("minizinc")
	if err != nil {
		return solver{}, errors.New("minizinc is not installed: on Debian, apt-get update && apt-get install --no-install-recommends minizinc")
	}
	list, err := exec.CommandContext(ctx, path, "--solvers").Output()
	if err != nil {
		return solver{}, fmt.Errorf("asking minizinc for its solvers: %w", err)
	}
	gecode := lineWith(string(list), "org.gecode.gecode")
	if gecode == "" {
		return solver{}, errors.New("minizinc is installed without Gecode: on Debian, apt-get install flatzinc")
	}
	version, err := exec.CommandContext(ctx, path, "--version").Output()
	if err != nil {
		return solver{}, fmt.Errorf("asking minizinc for its version: %w", err)
	}
	return solver{path, lineWith(string(version), "version") + "; " + gecode}, nil
}

// lineWith returns the first line that holds the word, or "".
func lineWith(text, word string) string {
	for line := range strings.Lines(text) {
		if strings.Contains(line, word) {
			return strings.TrimSpace(line)
		}
	}
	return ""
}

// method is a model and how it is searched.
type method struct {
	model    string // file in models/, without ending
	restarts bool
	seed     int // of the restarts
}

// String names the method as the table does.
func (m method) String() string {
	if m.restarts {
		return m.model + ", restarts"
	}
	return m.model + ", plain"
}

// solve runs the method on the night until it has a plan or the wall time is over. It returns
// [errNoAnswer], with the time spent, if there is none.
func (s solver) solve(ctx context.Context, n night, m method, limit time.Duration) (effort, error) {
	text, err := models.ReadFile("models/" + m.model + ".mzn")
	if err != nil {
		return effort{}, fmt.Errorf("no model %s: %w", m.model, err)
	}
	cmd := exec.CommandContext(ctx, s.path, "--solver", "gecode", "--statistics",
		"--time-limit", strconv.FormatInt(limit.Milliseconds(), 10),
		"--random-seed", strconv.Itoa(m.seed),
		"-D", fmt.Sprintf("people=%d;courts=%d;rounds=%d;restarts=%t", n.people, n.courts, n.rounds, m.restarts),
		"--input-from-stdin")
	cmd.Stdin = bytes.NewReader(text)
	e, output, err := measure(cmd)
	if err != nil {
		return effort{}, fmt.Errorf("%s: %w", m, err)
	}
	return e, n.check(output)
}
