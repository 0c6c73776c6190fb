package store

import (
	"os"
	"path/filepath"
	"strings"
)

// New files are made under a passing name in the folder where they will stand, so that giving them
// their name is one step that a crash cannot halve.

func passingPrefix(path string) string { return "." + filepath.Base(path) + ".new-" }

// createBeside makes an empty file of a passing name, mode 0600, in path's folder.
func createBeside(path string) (*os.File, error) {
	return os.CreateTemp(filepath.Dir(path), passingPrefix(path)+"*")
}

// sweep takes away what makers of path that were killed left in dir: it may hold names that were
// meant to be forgotten. It must run where nobody else can be making path, or where that one notices.
func sweep(path, dir string) {
	files, err := os.ReadDir(dir)
	if err != nil {
		return // it is a courtesy
	}
	for _, f := range files {
		if strings.HasPrefix(f.Name(), passingPrefix(path)) {
			os.Remove(filepath.Join(dir, f.Name()))
		}
	}
}
