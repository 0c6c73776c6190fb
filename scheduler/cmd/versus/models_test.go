package main

import (
	"errors"
	"io/fs"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestModelsFitTheCommand checks what can be seen without a solver: each model is used, takes the
// parameters that it will be given, prints the lines that will be read, and includes what Debian's
// packages can load.
func TestModelsFitTheCommand(t *testing.T) {
	used := append(night{20, 5, 5}.models(), night{8, 2, 7}.models()...)
	files, err := fs.Glob(models, "models/*.mzn")
	if err != nil || len(files) != len(used) {
		t.Fatalf("%d models are used of %v, %v", len(used), files, err)
	}
	for _, file := range files {
		t.Run(file, func(t *testing.T) {
			name := strings.TrimSuffix(strings.TrimPrefix(file, "models/"), ".mzn")
			if !slices.Contains(used, name) {
				t.Errorf("no night uses it")
			}
			text, err := models.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			for _, part := range []string{
				"\nint: people;", "\nint: courts;", "\nint: rounds;", "\nbool: restarts;",
				"\nsolve ::", " satisfy;\n", "\n  \"game \\(r) \\(c) \" ++",
			} {
				if strings.Count(string(text), part) != 1 {
					t.Errorf("%q is not in it just once", part)
				}
			}
			if strings.Contains(string(text), "globals.mzn") {
				t.Error("globals.mzn cannot be loaded with Debian's Gecode: include single files")
			}
		})
	}
}

// TestModelsFindPlans runs each model both ways on a small night, where a solver is installed.
func TestModelsFindPlans(t *testing.T) {
	if _, err := exec.LookPath("minizinc"); err != nil {
		t.Skip("minizinc is not installed: the stored answers stand in for it")
	}
	s, err := findSolver(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []night{{16, 4, 3}, {4, 1, 3}} {
		for _, model := range n.models() {
			for _, restarts := range []bool{false, true} {
				m := method{model, restarts, 1}
				t.Run(m.String(), func(t *testing.T) {
					e, err := s.solve(t.Context(), n, m, time.Minute)
					if err != nil {
						t.Fatal(err)
					}
					if e.wall < e.search || e.search <= 0 || e.cpu <= 0 {
						t.Errorf("took %+v", e)
					}
				})
			}
		}
	}
	if _, err := s.solve(t.Context(), night{8, 2, 2}, method{"golfer_set", false, 1}, time.Minute); !errors.Is(err, errImpossible) {
		t.Errorf("two rounds for 8 people: got %v, want %v", err, errImpossible)
	}
}
