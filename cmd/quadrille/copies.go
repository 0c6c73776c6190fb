package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"club/quadrille/store"
)

// copiesOf lists every copy of a data file that this program made by itself: the rolling backups of
// the desk, what a restore put aside, and what was kept of an older format. Copies that people asked
// for are theirs to know.
func copiesOf(path string) ([]string, error) {
	copies, err := store.Kept(path, backupFolder(path))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	beside, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		return nil, err
	}
	ext := filepath.Ext(path)
	stem := strings.TrimSuffix(filepath.Base(path), ext)
	for _, f := range beside {
		rest, ours := strings.CutPrefix(f.Name(), stem+"-")
		if ours && filepath.Ext(rest) == ext && (strings.HasPrefix(rest, "before-") || strings.HasPrefix(rest, "format")) {
			copies = append(copies, filepath.Join(filepath.Dir(path), f.Name()))
		}
	}
	return copies, nil
}
