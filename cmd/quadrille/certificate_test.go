package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"club/quadrille/cmd/quadrille/rotation"
	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/simulation"
)

var updateWords = flag.Bool("update-words", false, "write the texts of certificates in testdata/words anew")

// TestCertificatesInFull holds the whole text of certificates that an organiser would have to defend before the club:
// two nights on which half of the people sit out, with the ways to share the bench, one on which two do, and one of free courts.
func TestCertificatesInFull(t *testing.T) {
	for _, c := range [][3]int{{16, 2, 10}, {24, 3, 10}, {18, 4, 9}} {
		p, err := rotation.Request{Players: c[0], Courts: c[1], Rounds: c[2], Seed: 1}.Problem()
		if err != nil {
			t.Fatal(err)
		}
		rounds, err := scheduler.Plan(t.Context(), p, scheduler.Budget{})
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := printCertificate(&out, scheduler.Certify(p, rounds), 0); err != nil {
			t.Fatal(err)
		}
		if scheduler.Choosable(p) {
			ways, err := scheduler.Alternatives(t.Context(), p, scheduler.Budget{})
			if err != nil {
				t.Fatal(err)
			}
			if err := printAlternatives(&out, ways, p); err != nil {
				t.Fatal(err)
			}
		}
		sameText(t, fmt.Sprintf("plan-%d-%d-%d.txt", c[0], c[1], c[2]), out.String())
	}
}

// TestCertificateOfFreeCourtsInFull is the same for 37 people on 7 courts that call by themselves.
func TestCertificateOfFreeCourtsInFull(t *testing.T) {
	r, err := simulation.Run(t.Context(), &session.MemoryLog{}, simulation.Night{
		People: simulation.Invented(37, 1), Courts: 7, Minutes: 150, Flow: session.Rolling, Scoring: scoring.Rules{To: 11, WinBy: 2}, Seed: 1,
	}, nil)
	if err != nil {
		t.Fatal(err)
	}
	figures := regexp.MustCompile("at most [0-9]+") // they change with every game that is called otherwise
	var out strings.Builder
	for _, text := range r.Certificate.Words(false) {
		out.WriteString(wrap(figures.ReplaceAllString(text, "at most #"), 2) + "\n")
	}
	sameText(t, "rolling-37-7.txt", out.String())
}

// sameText compares with a file that was read and found good.
func sameText(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", "words", name)
	if *updateWords {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s: got\n%s\nwant\n%s", name, got, want)
	}
	for _, lie := range []string{"no rotation can be fairer", "cannot be fairer"} {
		if strings.Contains(got, lie) {
			t.Errorf("%s claims %q of rotations of other kinds too", name, lie)
		}
	}
}
