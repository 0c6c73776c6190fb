package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/spf13/pflag"
)

// macros are the lines that are commands of a manual page.
var macros = regexp.MustCompile(`^\.(TH|SH|TP|PP|B|BR|br|nf|fi|nh|ad)\b`)

// Every command has a page that names each of its flags, and no text of it is taken for a macro.
func TestTheManualHasAPageForEveryCommand(t *testing.T) {
	folder := t.TempDir()
	if _, errs, code := quadrille(t, "", "docs", folder); code != exitFine {
		t.Fatal(errs)
	}
	root := newRoot()
	for _, c := range append(root.Commands(), root) {
		path := filepath.Join(folder, manName(c)+".1")
		page, err := os.ReadFile(path)
		if c.Hidden {
			if err == nil {
				t.Errorf("%s is hidden and has a page", c.Name())
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		c.Flags().VisitAll(func(f *pflag.Flag) {
			if !f.Hidden && !bytes.Contains(page, []byte(roff("--"+f.Name))) {
				t.Errorf("%s does not name --%s", path, f.Name)
			}
		})
		for line := range strings.Lines(string(page)) {
			if strings.HasPrefix(line, ".") && !macros.MatchString(line) || strings.HasPrefix(line, "'") {
				t.Errorf("%s: %q would be taken for a macro", path, line)
			}
		}
		if groff, err := exec.LookPath("groff"); err == nil {
			if out, err := exec.Command(groff, "-man", "-ww", "-Tutf8", "-z", path).CombinedOutput(); err != nil || len(out) > 0 {
				t.Errorf("groff %s: %v %s", path, err, out)
			}
		}
	}
	if _, errs, code := quadrille(t, "", "docs", filepath.Join(folder, "none")); code != exitRefused || !strings.Contains(errs, "make it first") {
		t.Errorf("exit %d: %s", code, errs)
	}
}

func TestManualKeepsWhatItWouldTakeForItself(t *testing.T) {
	if got, want := roff(".dot 'a' -b \\c\n'quote"), `\&.dot \(aqa\(aq \-b \ec`+"\n"+`\(aqquote`; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
