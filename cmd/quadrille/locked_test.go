package main

import (
	"path/filepath"
	"strings"
	"testing"

	"club/quadrille/store"
)

// While a desk has the file open, commands that only tell or copy work, and those that would change
// it are refused, with the number of the process that has it.
func TestCommandsBesideAnOpenDesk(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "club.qdb")
	if _, errs, code := quadrille(t, "", "simulate", "--players", "8", "--courts", "2", "--rounds", "2", "--data", file); code != exitFine {
		t.Fatal(errs)
	}
	desk, err := store.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer desk.Close()
	for _, args := range [][]string{
		{"standings"}, {"standings", "--league"}, {"export"}, {"export", "--games"}, {"rate"}, {"check"}, {"backup", filepath.Join(folder, "copy.qdb")},
	} {
		if _, errs, code := quadrille(t, "", append(args, "--data", file)...); code != exitFine {
			t.Errorf("%v: exit %d: %s", args, code, errs)
		}
	}
	for _, args := range [][]string{{"import", "-"}, {"restore", filepath.Join(folder, "copy.qdb")}, {"forget", "P01", "--yes"}} {
		_, errs, code := quadrille(t, "name\nAnn\n", append(args, "--data", file)...)
		if code != exitRefused || !strings.Contains(errs, "this file is open in another Quadrille (process ") {
			t.Errorf("%v: exit %d: %s", args, code, errs)
		}
	}
}
