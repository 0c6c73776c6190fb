package care

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"testing"
)

// defers matches what every advice says: that local rules, the venue or qualified people decide, or are asked.
var defers = regexp.MustCompile(`(?i)qualified|local rules|your venue|the venue`)

// shownWithDefer are the texts that never stand alone: every screen and command that has one has Defer below it.
var shownWithDefer = []string{"Emergency"}

// Every exported text of the package defers, so that none can be added that does not.
func TestEveryTextDefers(t *testing.T) {
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, name := range names {
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.CONST {
				continue
			}
			for _, s := range g.Specs {
				v := s.(*ast.ValueSpec)
				for i, name := range v.Names {
					text, isText := "", false
					if i < len(v.Values) {
						text, isText = literal(v.Values[i])
					}
					if !name.IsExported() || !isText {
						continue
					}
					if seen++; !defers.MatchString(text) && !slices.Contains(shownWithDefer, name.Name) {
						t.Errorf("%s defers to nobody: %q", name.Name, text)
					}
				}
			}
		}
	}
	if seen < 5 {
		t.Fatalf("only %d texts were found", seen)
	}
}

// literal is a text that is written in the code, in one piece or in several.
func literal(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(e.Value)
		return text, err == nil && e.Kind == token.STRING
	case *ast.BinaryExpr:
		a, ok := literal(e.X)
		b, also := literal(e.Y)
		return a + b, ok && also
	}
	return "", false
}
