package tui

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"club/quadrille/session"
)

// readmeScreens are the screens that the README shows, each below its caption: how to come there in the demo, and the
// lines of the frame that matter.
var readmeScreens = []struct {
	caption  string
	keys     []string
	from, to int // lines of a frame of 80 by 24
}{
	{"The **bench** (`b`), with the answer to “why not me?” (`y`):", []string{"b", "y"}, 3, 21},
	{"The **rotation** (`r`):", []string{"r"}, 6, 18},
	{"The **standings** (`s`):", []string{"s"}, 3, 12},
	{"The **page of a person** (enter on a name):", []string{"f", "iris", "enter"}, 3, 20},
	{"The **call**, to read aloud (`v`):", []string{"c", "v"}, 3, 15},
}

// closer leaves one empty line where there are several.
func closer(text string) string {
	for strings.Contains(text, "\n\n\n") {
		text = strings.ReplaceAll(text, "\n\n\n", "\n\n")
	}
	return text
}

// TestGoldenScreensOfTheReadme: the README shows the main screens as the desk draws them. With -update they are drawn
// anew.
func TestGoldenScreensOfTheReadme(t *testing.T) {
	path := filepath.Join("..", "README.md")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	readme := string(text)
	for _, p := range readmeScreens {
		s := newStage(t)
		if err := session.OpenDemo(s.desk); err != nil {
			t.Fatal(err)
		}
		for _, a := range s.night().Roll {
			if a.State == session.Expected {
				s.do(session.CheckIn{Person: a.Person})
			}
		}
		var rounds []session.PlannedRound
		for r := range 8 {
			rounds = append(rounds, turned(s.night(), 2*r)) // two others sit out each time
		}
		s.do(session.CallRound{Plan: rounds}).reopen().pass(12)
		s.press("c", "117", "enter", "911", "enter", "1210", "enter", "113", "enter").press("n").pass(7).send(tickMsg{}).press("esc").press(p.keys...)
		checkFrame(t, s.m)
		want := strings.Trim(closer(picture(strings.Join(s.lines()[p.from:p.to], "\n"))), "\n")
		before, rest, ok := strings.Cut(readme, p.caption+"\n\n```\n")
		got, after, closed := strings.Cut(rest, "\n```\n")
		if !ok || !closed {
			t.Errorf("the README has no picture below %q", p.caption)
			continue
		}
		if got == want {
			continue
		}
		if f := flag.Lookup("update"); f == nil || f.Value.String() != "true" {
			t.Errorf("below %q the README shows\n%s\nthe desk draws\n%s\nrun: go test ./tui -run Golden -update", p.caption, got, want)
			continue
		}
		readme = before + p.caption + "\n\n```\n" + want + "\n```\n" + after
	}
	if readme == string(text) {
		return
	}
	if err := os.WriteFile(path, []byte(readme), 0o644); err != nil {
		t.Fatal(err)
	}
}
