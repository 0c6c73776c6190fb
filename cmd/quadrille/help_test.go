package main

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/spf13/cobra"
)

func TestEveryHelpHasAnExampleAndFits(t *testing.T) {
	var walk func(c *cobra.Command, path []string)
	walk = func(c *cobra.Command, path []string) {
		t.Run(strings.Join(append([]string{"quadrille"}, path...), " "), func(t *testing.T) {
			if c.Example == "" {
				t.Error("the help shows no example")
			}
			out, errs, code := quadrille(t, "", append(path, "--help")...)
			if code != exitFine || errs != "" {
				t.Fatalf("exit %d, %s", code, errs)
			}
			for line := range strings.Lines(out) {
				if w := ansi.StringWidth(strings.TrimRight(line, "\n")); w > columns {
					t.Errorf("%d columns: %s", w, line)
				}
			}
		})
		for _, sub := range c.Commands() {
			walk(sub, append(path[:len(path):len(path)], sub.Name()))
		}
	}
	walk(newRoot(), nil)
}

// An option that a help example shows must exist, or the example teaches a mistake.
func TestExamplesUseRealFlags(t *testing.T) {
	root := newRoot()
	for _, c := range append(root.Commands(), root) {
		for line := range strings.Lines(c.Example) {
			at := strings.LastIndex(line, "quadrille")
			words := strings.Fields(line[at:])[1:]
			sub, rest, err := root.Find(words)
			if err != nil {
				t.Errorf("%s: %v", line, err)
				continue
			}
			for _, word := range rest {
				name, isFlag := strings.CutPrefix(word, "--")
				if isFlag && sub.Flag(name) == nil {
					t.Errorf("%s: %s has no flag --%s", line, sub.Name(), name)
				}
			}
		}
	}
}
