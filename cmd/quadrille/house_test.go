package main

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// outside are references that a reader of the repository cannot follow.
var outside = regexp.MustCompile(`(?i)\bissues? (of the|[0-9])|the (first|second) issue|the issues ask|testissue|/` + `shared/|\bdes` + `ign\.md`)

// Whoever has the repository has everything that it speaks of.
func TestNothingRefersToPapersOutside(t *testing.T) {
	for path, text := range textsBelow(t, filepath.Join("..", ".."), ".go", ".md", ".txt", ".mod", "run") {
		if filepath.Base(path) == "house_test.go" {
			continue
		}
		if at := outside.FindIndex(text); at != nil {
			line := 1 + bytes.Count(text[:at[0]], []byte("\n"))
			t.Errorf("%s:%d speaks of %q", path, line, text[at[0]:at[1]])
		}
	}
}

// spreads measures how long a run takes only to spread its kills over it, and asserts nothing of that.
const spreads = "TestForgetKilledAtAnyMomentCanBeRunAgain"

// A test that measures time fails on a busy machine. Benchmarks measure, and what quick_test.go and
// desk_load_test.go hold back for a quiet machine.
func TestNoTestMeasuresTime(t *testing.T) {
	for path, text := range textsBelow(t, filepath.Join("..", ".."), "_test.go") {
		if name := filepath.Base(path); strings.HasSuffix(name, "bench_test.go") || name == "quick_test.go" || name == "desk_load_test.go" {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, text, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || strings.HasPrefix(fn.Name.Name, "Benchmark") || fn.Name.Name == spreads {
				continue
			}
			ast.Inspect(fn, func(n ast.Node) bool {
				if sel, ok := n.(*ast.SelectorExpr); ok && sel.Sel.Name == "Since" {
					if x, ok := sel.X.(*ast.Ident); ok && x.Name == "time" {
						t.Errorf("%s: %s measures time", path, fn.Name.Name)
					}
				}
				return true
			})
		}
	}
}

// textsBelow reads all files below a folder whose names end in one of these ways.
func textsBelow(t *testing.T, folder string, ends ...string) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	err := filepath.WalkDir(folder, func(path string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case e.IsDir() && e.Name() == ".git":
			return fs.SkipDir
		case e.IsDir() || !slices.ContainsFunc(ends, func(end string) bool { return strings.HasSuffix(e.Name(), end) }):
			return nil
		}
		text, err := os.ReadFile(path)
		out[filepath.ToSlash(path)] = text
		return err
	})
	if err != nil || len(out) == 0 {
		t.Fatalf("%d files, %v", len(out), err)
	}
	return out
}
