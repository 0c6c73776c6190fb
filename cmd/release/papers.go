package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// papers are what every archive has beside the binary: README, licences, manual pages and completions.
func papers(ctx context.Context, work string) ([]entry, error) {
	readme, err := os.ReadFile("README.md")
	if err != nil {
		return nil, err
	}
	licences, err := licences(ctx)
	if err != nil {
		return nil, err
	}
	entries := []entry{{"README.md", readme, 0o644}, {"LICENCES.txt", licences, 0o644}}
	pages, err := manuals(ctx, work)
	if err != nil {
		return nil, err
	}
	entries = append(entries, pages...)
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		script, err := output(ctx, "go", "run", program, "completion", shell)
		if err != nil {
			return nil, err
		}
		entries = append(entries, entry{"completions/quadrille." + shell, []byte(script + "\n"), 0o644})
	}
	return entries, nil
}

// manuals are the manual pages, in the order of their names.
func manuals(ctx context.Context, work string) (entries []entry, err error) {
	folder := filepath.Join(work, "man")
	if err := os.Mkdir(folder, 0o755); err != nil {
		return nil, err
	}
	if _, err := output(ctx, "go", "run", program, "docs", folder); err != nil {
		return nil, err
	}
	pages, err := os.ReadDir(folder) // sorted
	if err != nil {
		return nil, err
	}
	for _, page := range pages {
		text, err := os.ReadFile(filepath.Join(folder, page.Name()))
		if err != nil {
			return nil, err
		}
		entries = append(entries, entry{"man/" + page.Name(), text, 0o644})
	}
	return entries, nil
}

// licences are the licences of all modules that are in the binary of any target, one after the other, and that
// of the language whose library is in it too.
func licences(ctx context.Context) ([]byte, error) {
	dirs := map[string]string{} // module and version, where it lies
	for _, t := range targets {
		list, err := output(ctx, "env", "GOOS="+t.system, "GOARCH="+t.processor, "CGO_ENABLED=0",
			"go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}\t{{.Dir}}{{end}}{{end}}", program)
		if err != nil {
			return nil, err
		}
		for line := range strings.Lines(list) {
			if module, dir, ok := strings.Cut(strings.TrimSpace(line), "\t"); ok {
				dirs[module] = dir
			}
		}
	}
	root, err := output(ctx, "go", "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	dirs["Go, its standard library"] = root
	var out bytes.Buffer
	out.WriteString("Quadrille itself has no licence yet: its owner has not chosen one. What it is made of has these.\n")
	modules := make([]string, 0, len(dirs))
	for m := range dirs {
		modules = append(modules, m)
	}
	slices.Sort(modules)
	for _, m := range modules {
		if err := licenceOf(&out, m, dirs[m]); err != nil {
			return nil, err
		}
	}
	return out.Bytes(), nil
}

// licenceFiles are the names, without an ending, of the files that a licence asks to be passed on; the last is that of
// the font of printed sheets, which lies beside its module's own.
var licenceFiles = []string{"LICENSE", "LICENCE", "COPYING", "NOTICE", "PATENTS", "LICENSE-DEJAVU"}

// licenceOf writes the licence files of a module; of one that has its licence in its README, the README. A module
// without any may not be shipped.
func licenceOf(out *bytes.Buffer, module, dir string) error {
	files, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	found := false
	readme := ""
	for _, f := range files {
		stem := strings.ToUpper(strings.TrimSuffix(strings.TrimSuffix(f.Name(), ".md"), ".txt"))
		switch {
		case f.IsDir():
		case stem == "README":
			readme = f.Name()
		case slices.Contains(licenceFiles, stem):
			if err := appendFile(out, module, dir, f.Name()); err != nil {
				return err
			}
			found = found || slices.Index(licenceFiles, stem) < 3 // a notice or patents alone are no licence
		}
	}
	if found {
		return nil
	}
	if text, err := os.ReadFile(filepath.Join(dir, readme)); readme != "" && err == nil && bytes.Contains(bytes.ToUpper(text), []byte("LICENSE")) {
		return appendFile(out, module, dir, readme)
	}
	return fmt.Errorf("%s has no licence in %s: it may not be shipped", module, dir)
}

func appendFile(out *bytes.Buffer, module, dir, name string) error {
	text, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "\n\n%s\n%s: %s\n\n%s", strings.Repeat("=", 80), module, name, strings.ReplaceAll(string(text), "\r\n", "\n"))
	return nil
}
