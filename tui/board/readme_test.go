package board

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"club/quadrille/session/public"
)

// TestGoldenBoardOfTheReadme: the picture of a board in the README is what it draws. With -update it is drawn anew.
func TestGoldenBoardOfTheReadme(t *testing.T) {
	v := hall(4, 2)
	v.Courts[2].A = []string{"Iris L.", "Lio T."}
	v.Courts[2].B = []string{"Kaya S.", "Rosa C."}
	v.Courts[3] = public.Court{Name: "4", State: public.Called, A: []string{"Maud E.", "Nils R."}, B: []string{"Oona B.", "Pavel D."}}
	var lines []string
	for l := range strings.SplitSeq(frame(v, [2]int{84, 24}, 0, nil), "\n") {
		lines = append(lines, strings.TrimRight(l, " "))
	}
	want := strings.TrimRight(strings.Join(lines, "\n"), "\n")

	path := filepath.Join("..", "..", "README.md")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(text), "has room for:\n\n```\n")
	got, after, closed := strings.Cut(rest, "\n```\n")
	switch {
	case !ok || !closed:
		t.Fatal("the README has no picture of a board")
	case got == want:
		return
	}
	if f := flag.Lookup("update"); f == nil || f.Value.String() != "true" {
		t.Fatalf("the README shows\n%s\nthe board draws\n%s\nrun: go test ./tui/board -run Golden -update", got, want)
	}
	anew := before + "has room for:\n\n```\n" + want + "\n```\n" + after
	if err := os.WriteFile(path, []byte(anew), 0o644); err != nil {
		t.Fatal(err)
	}
}
