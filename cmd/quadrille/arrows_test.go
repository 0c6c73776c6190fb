package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// module is the path of this module; it must sort before Bubble Tea's, see tui/background.
const module = "club/quadrille"

// arrows says which parts of the house a part may import besides itself.
var arrows = map[string][]string{
	"cmd":       {"tui", "session", "scheduler", "scoring", "store"},
	"tui":       {"session", "scheduler", "scoring"},
	"session":   {"scheduler", "scoring"},
	"store":     {"session"},
	"scheduler": {},
	"scoring":   {},
}

// pureParts must not know of clocks, files, terminals or global randomness.
var pureParts = map[string]bool{"scheduler": true, "scoring": true}

// impure are packages that a pure part must not import. A part's own commands may.
var impure = []string{"os", "io/fs", "net", "net/http", "math/rand", "path/filepath", "os/exec", "os/signal", "log", "log/slog"}

func TestImportArrows(t *testing.T) {
	root := filepath.Join("..", "..")
	for part, may := range arrows {
		for file, imports := range importsBelow(t, filepath.Join(root, part)) {
			for _, path := range imports {
				checkImport(t, part, may, file, path)
			}
		}
	}
	for part := range pureParts {
		checkNoClock(t, filepath.Join(root, part))
	}
	if module >= "github.com/charmbracelet/bubbletea" {
		t.Error("the module path must sort before Bubble Tea's, or starting takes five seconds on some terminals")
	}
}

func checkImport(t *testing.T, part string, may []string, file, path string) {
	t.Helper()
	inner, ours := strings.CutPrefix(path, module+"/")
	if ours {
		to, _, _ := strings.Cut(inner, "/")
		if to != part && !slices.Contains(may, to) {
			t.Errorf("%s imports %s: %s may import only %v", file, path, part, may)
		}
		return
	}
	if pureParts[part] && !strings.Contains(file, "/cmd/") && slices.Contains(impure, path) {
		t.Errorf("%s imports %s: %s is pure", file, path, part)
	}
}

// clock are the functions of package time that read or wait for the clock. Spans of time are fine.
var clock = []string{"Now", "Since", "Until", "Sleep", "After", "AfterFunc", "Tick", "NewTimer", "NewTicker"}

// checkNoClock finds uses of the clock below a folder.
func checkNoClock(t *testing.T, folder string) {
	t.Helper()
	for file, f := range filesBelow(t, folder, 0) {
		if strings.Contains(file, "/cmd/") {
			continue
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if sel, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := sel.X.(*ast.Ident); ok && x.Name == "time" && slices.Contains(clock, sel.Sel.Name) {
					t.Errorf("%s uses time.%s: time comes in as an argument", file, sel.Sel.Name)
				}
			}
			return true
		})
	}
}

// importsBelow reads the imports of every Go file below a folder, but for tests, which may import
// whatever they need to check a part from outside.
func importsBelow(t *testing.T, folder string) map[string][]string {
	t.Helper()
	out := map[string][]string{}
	for file, f := range filesBelow(t, folder, parser.ImportsOnly) {
		for _, spec := range f.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				t.Fatal(err)
			}
			out[file] = append(out[file], name)
		}
	}
	return out
}

// filesBelow parses every Go file below a folder that is no test.
func filesBelow(t *testing.T, folder string, mode parser.Mode) map[string]*ast.File {
	t.Helper()
	out := map[string]*ast.File{}
	err := filepath.WalkDir(folder, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, mode)
		out[filepath.ToSlash(path)] = f
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(out) == 0 {
		t.Fatalf("no Go files below %s", folder)
	}
	return out
}
