//go:build !windows

package main

import (
	"strings"
	"testing"
)

// TestAsksForTheBackgroundBehindTheFirstFrame: on a terminal that can be asked the question comes after
// something to read, an answer is never typed into the desk, and keys around it count.
func TestAsksForTheBackgroundBehindTheFirstFrame(t *testing.T) {
	s := build(t).open(t, 80, 24, []string{"COLORTERM=truecolor"}, "demo")
	const question = "\x1b]11;?"
	s.Shows("Quadrille", "Next:").until("the question", func(string) bool { return strings.Contains(s.Raw(), question) })
	before, _, _ := strings.Cut(s.Raw(), question)
	if !strings.Contains(before, "Next:") {
		t.Error("the question comes before the first frame")
	}
	s.Press("d").Shows("Find or add:")
	s.Type("zo\x1b]11;rgb:ffff/ffff/ffff\x1b\\ra").Shows("Find or add: zora")
	if code := s.Press("esc").Quit("ctrl+c"); code != 0 {
		t.Errorf("exit code %d", code)
	}
}
