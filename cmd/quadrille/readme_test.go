package main

import (
	"fmt"
	"go/ast"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"club/quadrille/cmd/quadrille/events"
	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/cmd/quadrille/sheet"
	"club/quadrille/cmd/quadrille/wire"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/roster"
	"club/quadrille/store"
)

// readme is the README with its lines joined, so that a sentence may break anywhere.
func readme(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(string(text)), " ")
}

// The README states the limits that the program keeps.
func TestTheReadmeStatesTheLimits(t *testing.T) {
	text := readme(t)
	say := func(format string, numbers ...int) string {
		words := make([]any, len(numbers))
		for i, n := range numbers {
			words[i] = thousands(n)
		}
		return fmt.Sprintf(strings.ReplaceAll(format, "%d", "%s"), words...)
	}
	for _, want := range []string{
		say("at most %d courts and 60 rounds", session.MaxCourts),
		say("for %d to %d people, %d courts and %d rounds", fewest, rotation.MaxPeople, rotation.MaxCourts, rotation.MaxRounds),
		say("to at most %d points", scoring.MaxTo),
		say("at most %d people in 4 MiB", roster.MaxEntries),
		say("a table of games %d games in 64 MiB", sheet.MaxGames),
		say("export %d events", events.MaxRecords),
		say("A name is at most %d cells wide", session.MaxName),
		say("Up to %d boards follow a desk", wire.MaxBoards),
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the README does not say %q", want)
		}
	}
	s := session.DefaultSettings(1)
	s.Rounds = 60
	if err := s.Validate(); err != nil {
		t.Error(err)
	}
	if s.Rounds++; s.Validate() == nil {
		t.Error("a night of 61 rounds is fine: the README says 60")
	}
}

// The README lists every module that is part of the program, under the licence that lies in it.
func TestTheReadmeListsTheLicences(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]string{}
	for _, row := range regexp.MustCompile(`(?m)^\| (MIT|Apache-2\.0|BSD-[23]-Clause) \| (.*) \|$`).FindAllStringSubmatch(string(text), -1) {
		for module := range strings.SplitSeq(row[2], ", ") {
			name, _, _ := strings.Cut(module, " ")
			listed[name] = row[1]
		}
	}
	for path, dir := range linkedModules(t) {
		switch got := licenceIn(t, dir); {
		case listed[path] == "":
			t.Errorf("the README does not list %s (%s)", path, got)
		case got != listed[path]:
			t.Errorf("the README lists %s under %s, its licence is %s", path, listed[path], got)
		}
	}
	required := requiredModules(t)
	delete(listed, "Go")
	for path := range listed {
		if !slices.Contains(required, path) {
			t.Errorf("the README lists %s, which go.mod does not have", path)
		}
	}
}

// Nothing in the program opens a network connection but the page for phones: of all that it is made of besides
// Go's own packages, only three import packages that reach networks: the reader of flags, to read addresses; wire, for a
// socket in the file system; and phones. That page answers, and asks nobody.
func TestOnlyThePageKnowsNetworks(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", `{{if not .Standard}}{{.ImportPath}} {{join .Imports " "}}{{end}}`, ".").Output()
	if err != nil {
		t.Fatal(err)
	}
	const crowd = "phones/crowd" // phones of tests, which ask
	may := map[string][]string{
		"github.com/spf13/pflag":         {"net"},
		module + "/cmd/quadrille/wire":   {"net"},
		module + "/cmd/quadrille/phones": {"net", "net/http"},
	}
	pure := []string{"net/url", "net/netip"} // which only read addresses
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		if len(words) == 0 {
			continue
		}
		if words[0] == module+"/cmd/quadrille/"+crowd || words[0] == module+"/cmd/quadrille/phones/browser" {
			t.Errorf("%s is for tests, and part of the program", words[0])
		}
		for _, imported := range words[1:] {
			network := imported == "net" || strings.HasPrefix(imported, "net/") || imported == "crypto/tls" || strings.HasPrefix(imported, "golang.org/x/net")
			if network && !slices.Contains(pure, imported) && !slices.Contains(may[words[0]], imported) {
				t.Errorf("%s imports %s: it speaks to networks", words[0], imported)
			}
		}
	}
	dials := regexp.MustCompile(`http\.(Get|Post|Head|Client|DefaultClient|NewRequest|Transport)|net\.(Dial|Lookup|Resolver)`)
	for path, text := range textsBelow(t, "phones", ".go") {
		if found := dials.Find(text); found != nil && !strings.HasSuffix(path, "_test.go") && !strings.HasPrefix(filepath.ToSlash(path), crowd+"/") {
			t.Errorf("%s uses %s: the page answers, and asks nobody", path, found)
		}
	}
}

// The package wire names no network but that of sockets in the file system, wherever it listens or dials.
func TestTheSocketIsOnNoNetwork(t *testing.T) {
	found := 0
	for file, f := range filesBelow(t, "wire", 0) {
		ast.Inspect(f, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			sel, ok := call.Fun.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if x, ok := sel.X.(*ast.Ident); !ok || x.Name != "net" {
				return true
			}
			found++
			if network, ok := call.Args[0].(*ast.BasicLit); !ok || network.Value != `"unix"` {
				t.Errorf("%s calls net.%s on another network than unix", file, sel.Sel.Name)
			}
			return true
		})
	}
	if found == 0 {
		t.Error("no call was found")
	}
}

// linkedModules are the modules of this system's program and where they lie.
func linkedModules(t *testing.T) map[string]string {
	t.Helper()
	out, err := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Dir}}{{end}}{{end}}", ".").Output()
	if err != nil {
		t.Fatal(err)
	}
	modules := map[string]string{}
	for line := range strings.Lines(string(out)) {
		if path, dir, ok := strings.Cut(strings.TrimSpace(line), " "); ok {
			modules[path] = dir
		}
	}
	if len(modules) < 10 {
		t.Fatalf("only %d modules: %s", len(modules), out)
	}
	return modules
}

// licenceIn tells the licence of a module from the text that lies in it.
func licenceIn(t *testing.T, dir string) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "LICEN[CS]E*"))
	if len(files) == 0 {
		files, err = filepath.Glob(filepath.Join(dir, "COPYING*"))
	}
	if err != nil || len(files) == 0 {
		t.Fatalf("%s has no licence (%v)", dir, err)
	}
	text, err := os.ReadFile(files[0])
	if err != nil {
		t.Fatal(err)
	}
	has := func(words string) bool {
		return strings.Contains(strings.Join(strings.Fields(string(text)), " "), words)
	}
	switch {
	case has("Apache License Version 2.0"):
		return "Apache-2.0"
	case has("Permission is hereby granted, free of charge"):
		return "MIT"
	case has("Redistribution and use in source and binary forms") && has("endorse or promote"):
		return "BSD-3-Clause"
	case has("Redistribution and use in source and binary forms"):
		return "BSD-2-Clause"
	}
	return "unknown"
}

// requiredModules are the modules of go.mod.
func requiredModules(t *testing.T) (paths []string) {
	t.Helper()
	text, err := os.ReadFile("../../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range regexp.MustCompile(`(?m)^\t(\S+) v`).FindAllStringSubmatch(string(text), -1) {
		paths = append(paths, line[1])
	}
	return paths
}

// thousands writes a number with commas.
func thousands(n int) string {
	if n < 1000 {
		return strconv.Itoa(n)
	}
	return fmt.Sprintf("%s,%03d", thousands(n/1000), n%1000)
}

// The list of changes says which club files open: with a format more, or a release, it must say more.
func TestTheReadmeSaysWhichFilesOpen(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, news, ok := strings.Cut(string(text), "\n## What is new\n")
	news, _, _ = strings.Cut(news, "\n## ")
	news = strings.Join(strings.Fields(news), " ")
	want := fmt.Sprintf("A club file of format %d, which is the only one so far, opens as it is", store.Schema)
	if !ok || !strings.Contains(news, want) || !strings.Contains(news, "No version has been released yet") {
		t.Errorf("the list of changes does not say %q", want)
	}
}
