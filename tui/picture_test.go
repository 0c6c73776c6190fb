package tui

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"club/quadrille/session"
)

// TestGoldenPictureOfTheReadme: the picture of the desk in the README is the frame that the desk draws
// in the middle of its demo. With -update the picture is drawn anew.
func TestGoldenPictureOfTheReadme(t *testing.T) {
	s := newStage(t)
	if err := session.OpenDemo(s.desk); err != nil {
		t.Fatal(err)
	}
	s.reopen().resize(90, 22).press("c", "n").pass(12).press("117", "enter", "right", "left", "enter", "aabba", "esc")
	checkFrame(t, s.m)
	want := picture(s.m.View())

	path := filepath.Join("..", "README.md")
	readme, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	const open, end = "```\nQuadrille  Demo night", "\n```\n"
	start := strings.Index(string(readme), open)
	length := strings.Index(string(readme)[max(0, start):], end)
	if start < 0 || length < 0 {
		t.Fatal("the README has no picture of the desk")
	}
	from, to := start+len("```\n"), start+length
	got := string(readme)[from:to]
	if got == want {
		return
	}
	if f := flag.Lookup("update"); f == nil || f.Value.String() != "true" {
		t.Fatalf("the README shows\n%s\nthe desk draws\n%s\nrun: go test ./tui -run Golden -update", got, want)
	}
	anew := string(readme)[:from] + want + string(readme)[to:]
	if err := os.WriteFile(path, []byte(anew), 0o644); err != nil {
		t.Fatal(err)
	}
}

// picture is a frame without the blanks at the ends of its lines.
func picture(frame string) string {
	lines := strings.Split(frame, "\n")
	for i, line := range lines {
		lines[i] = strings.TrimRight(line, " ")
	}
	return strings.Join(lines, "\n")
}
