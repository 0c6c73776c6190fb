package main

import (
	"os"
	"path/filepath"
	"regexp"
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

// A command or flag that an example shows must exist, or the example teaches a mistake.
func TestExamplesUseRealFlags(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	examples := regexp.MustCompile("`[^`\n]*quadrille [^`\n]+`").FindAllString(string(readme), -1)
	if len(examples) == 0 {
		t.Error("the README shows no command")
	}
	root := newRoot()
	root.InitDefaultCompletionCmd()
	for _, c := range append(root.Commands(), root) {
		examples = append(examples, strings.Split(c.Example, "\n")...)
	}
	for _, line := range examples {
		if !strings.Contains(line, "go build") && !strings.Contains(line, "COMMAND") {
			checkExample(t, root, strings.Trim(line, "` "))
		}
	}
}

// checkExample looks every command of a line up, and its flags.
func checkExample(t *testing.T, root *cobra.Command, line string) {
	t.Helper()
	for part := range strings.SplitSeq(line, "|") {
		_, rest, isOurs := strings.Cut(part+" ", "quadrille ")
		if !isOurs {
			continue
		}
		c, args, err := root.Find(strings.Fields(rest))
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		if c == root && len(args) > 0 && !strings.HasPrefix(args[0], "--") {
			t.Errorf("%s: there is no command %s", line, args[0])
		}
		for _, word := range args {
			name, isFlag := strings.CutPrefix(word, "--")
			if isFlag && name != "help" && name != "version" && c.Flag(name) == nil && c.InheritedFlags().Lookup(name) == nil {
				t.Errorf("%s: %s has no flag --%s", line, c.Name(), name)
			}
		}
	}
}

// The help names every variable of the environment that the program reads.
func TestTheHelpNamesTheEnvironment(t *testing.T) {
	names := regexp.MustCompile(`[gG]etenv\("([A-Z_]+)"`)
	found := map[string]bool{"NO_COLOR": true} // which a library reads for us
	for path, text := range textsBelow(t, filepath.Join("..", ".."), ".go") {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		for _, m := range names.FindAllSubmatch(text, -1) {
			found[string(m[1])] = true
		}
	}
	if !found["QUADRILLE_DATA"] || len(found) < 5 {
		t.Fatalf("the search finds only %v", found)
	}
	for name := range found {
		if !strings.Contains(surroundings, name) {
			t.Errorf("the help does not name %s", name)
		}
	}
}
