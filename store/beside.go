package store

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
)

// New files are made under a passing name in the folder where they will stand, so that giving them
// their name is one step that a crash cannot halve. The name tells which process makes the file, so
// that one whose maker was killed can be told from one that is still being made.

func passingPrefix(path string) string { return "." + filepath.Base(path) + ".new-" }

// createBeside makes an empty file of a passing name, mode 0600, in path's folder.
func createBeside(path string) (*os.File, error) {
	return os.CreateTemp(filepath.Dir(path), fmt.Sprintf("%s%d-*", passingPrefix(path), os.Getpid()))
}

// CreateExport makes an empty file of a passing name, mode 0600, for an export that will stand in
// folder dir. [Sweep] removes what a killed export leaves.
func CreateExport(dir string) (*os.File, error) {
	return os.CreateTemp(dir, fmt.Sprintf(".quadrille-%d-*", os.Getpid()))
}

// Sweep removes what makers of new files left when they were killed, since it may hold names that
// were meant to be forgotten: passing files of the club file at path and of its copies, and of
// exports, in path's folder and in those of dirs. What a running process is making stays. A file that
// cannot be removed is left for the next time.
func Sweep(path string, dirs ...string) {
	passing := passingNames(path)
	for _, dir := range append([]string{filepath.Dir(path)}, dirs...) {
		files, err := os.ReadDir(dir)
		if err != nil {
			continue // it is a courtesy
		}
		for _, f := range files {
			name := filepath.Join(dir, f.Name())
			if found := passing.FindStringSubmatch(f.Name()); found != nil && f.Type().IsRegular() && !held(name, found[1]+found[2]) {
				os.Remove(name)
			}
		}
	}
}

// passingNames matches the passing names of a club file, of its copies (whose names go on after its
// own) and of exports. A group holds the number of the maker, "" in a name that an older program gave.
func passingNames(path string) *regexp.Regexp {
	ext := filepath.Ext(path)
	stem := strings.TrimSuffix(filepath.Base(path), ext)
	const number = `(?:(\d+)-)?\d+$`
	return regexp.MustCompile(`^\.` + regexp.QuoteMeta(stem) + `(?:-.*)?` + regexp.QuoteMeta(ext) + `\.new-` + number +
		`|^\.quadrille-` + number)
}

// held tells whether a running process makes the file of a passing name. One that does not say who its
// maker is counts as held while it is locked.
func held(name, maker string) bool {
	if pid, err := strconv.Atoi(maker); err == nil {
		return alive(pid)
	}
	f, err := os.OpenFile(name, os.O_RDWR, 0)
	if err != nil {
		return false
	}
	defer f.Close()
	locked, err := tryLock(f)
	return err == nil && !locked
}
