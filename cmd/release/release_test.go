package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

var someEntries = []entry{{"quadrille", []byte("binary"), 0o755}, {"man/quadrille.1", []byte("page"), 0o644}}

func TestArchivesAreEqualAndCanBeRead(t *testing.T) {
	at := time.Date(2026, time.March, 3, 19, 0, 0, 0, time.UTC)
	for _, zipped := range []bool{false, true} {
		var sums [2]string
		for i := range sums {
			file := filepath.Join(t.TempDir(), "quadrille-1.0-some")
			sum, err := archive(file, "quadrille-1.0-some", someEntries, at, zipped)
			if err != nil {
				t.Fatal(err)
			}
			sums[i] = sum
			_, name, _ := strings.Cut(sum, "  ")
			content, err := os.ReadFile(filepath.Join(filepath.Dir(file), name))
			if err != nil {
				t.Fatal(err)
			}
			if want := fmt.Sprintf("%x  %s", sha256.Sum256(content), name); sum != want {
				t.Errorf("the checksum is %s, not %s", sum, want)
			}
			if got, want := listed(t, content, zipped), "quadrille-1.0-some/quadrille 755 binary\nquadrille-1.0-some/man/quadrille.1 644 page\n"; got != want {
				t.Errorf("the archive holds\n%s", got)
			}
		}
		if sums[0] != sums[1] {
			t.Errorf("equal entries give %s and %s", sums[0], sums[1])
		}
	}
}

// listed reads an archive back.
func listed(t *testing.T, content []byte, zipped bool) string {
	t.Helper()
	var out strings.Builder
	if zipped {
		files, err := zip.NewReader(bytes.NewReader(content), int64(len(content)))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files.File {
			r, err := f.Open()
			if err != nil {
				t.Fatal(err)
			}
			text, err := io.ReadAll(r)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&out, "%s %o %s\n", f.Name, f.Mode(), text)
		}
		return out.String()
	}
	packed, err := gzip.NewReader(bytes.NewReader(content))
	if err != nil {
		t.Fatal(err)
	}
	files := tar.NewReader(packed)
	for {
		head, err := files.Next()
		if errors.Is(err, io.EOF) {
			return out.String()
		}
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(files)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&out, "%s %o %s\n", head.Name, head.Mode, text)
	}
}

func TestNoModuleIsShippedWithoutItsLicence(t *testing.T) {
	for _, tt := range []struct {
		files map[string]string
		want  string // "" for a refusal
	}{
		{map[string]string{"LICENSE": "do as you like", "main.go": "package main"}, "do as you like"},
		{map[string]string{"COPYING.txt": "copy it", "NOTICE": "ours"}, "copy it"},
		{map[string]string{"README.md": "## License\nMIT"}, "MIT"},
		{map[string]string{"README.md": "nothing of the kind"}, ""},
		{map[string]string{"NOTICE": "ours"}, ""},
		{map[string]string{}, ""},
	} {
		dir := t.TempDir()
		for name, text := range tt.files {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		var out bytes.Buffer
		err := licenceOf(&out, "example.org/module v1.0.0", dir)
		if (err == nil) != (tt.want != "") || !strings.Contains(out.String(), tt.want) {
			t.Errorf("%v: %v, %q", tt.files, err, out.String())
		}
	}
}

func TestTargetsAreChosenByName(t *testing.T) {
	all, err := choose("")
	if err != nil || len(all) != 6 {
		t.Errorf("%v, %v", all, err)
	}
	one, err := choose("windows/arm64")
	if err != nil || len(one) != 1 || one[0] != (target{"windows", "arm64"}) {
		t.Errorf("%v, %v", one, err)
	}
	if _, err := choose("linux/mips"); err == nil || !strings.Contains(err.Error(), "linux/amd64") {
		t.Errorf("%v", err)
	}
}

// Two checkouts of one commit in two folders give the same bytes, and the binary runs where it is built.
func TestEqualCommitsGiveEqualBytes(t *testing.T) {
	if os.Getenv("QUADRILLE_LONG") == "" {
		t.Skip("builds the program twice: QUADRILLE_LONG=1 runs it")
	}
	top, err := output(t.Context(), "git", "rev-parse", "--show-toplevel")
	if err != nil {
		t.Skipf("no repository here: %v", err)
	}
	here := runtime.GOOS + "/" + runtime.GOARCH
	var sums [2]string
	for i, name := range []string{"one", "another-folder"} {
		checkout := filepath.Join(t.TempDir(), name)
		if _, err := output(t.Context(), "git", "clone", "-q", top, checkout); err != nil {
			t.Fatal(err)
		}
		cmd := exec.CommandContext(t.Context(), "go", "run", "./cmd/release", "-version", "9.9.9", "-only", here, "made")
		cmd.Dir = checkout
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		text, err := os.ReadFile(filepath.Join(checkout, "made", "SHA256SUMS"))
		if err != nil {
			t.Fatal(err)
		}
		sums[i] = string(text)
		runs(t, filepath.Join(checkout, "made"), strings.Fields(sums[i])[1])
	}
	if sums[0] != sums[1] {
		t.Errorf("two folders give\n%s\nand\n%s", sums[0], sums[1])
	}
}

// runs unpacks an archive and lets its binary look itself over.
func runs(t *testing.T, folder, name string) {
	t.Helper()
	if strings.HasSuffix(name, ".zip") {
		return // no tool to unpack it is sure to be here
	}
	if _, err := output(t.Context(), "tar", "-xzf", filepath.Join(folder, name), "-C", folder); err != nil {
		t.Fatal(err)
	}
	binary := filepath.Join(folder, strings.TrimSuffix(name, ".tar.gz"), "quadrille")
	said, err := output(t.Context(), binary, "--version")
	if err != nil || !strings.HasPrefix(said, "quadrille 9.9.9 of commit ") {
		t.Errorf("--version says %q, %v", said, err)
	}
	if said, err := output(t.Context(), binary, "demo", "--selftest"); err != nil || !strings.Contains(said, "fine: quadrille 9.9.9") {
		t.Errorf("demo --selftest says %q, %v", said, err)
	}
}
