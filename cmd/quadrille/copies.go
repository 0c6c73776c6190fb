package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"club/quadrille/store"
)

// copiesOf lists every copy of a club file that this program made by itself: the rolling backups of
// the desk, what made room for a restored file, and what was kept of an older format. Copies that
// people asked for are theirs to know. Of a symbolic link it is what lies beside the link too.
func copiesOf(path string) ([]string, error) {
	copies, err := copiesBeside(path)
	if err != nil {
		return nil, err
	}
	real, err := store.Resolve(path)
	if err != nil || real == path {
		return copies, err
	}
	more, err := copiesBeside(real)
	return append(copies, more...), err
}

func copiesBeside(path string) ([]string, error) {
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
		if ours && f.Type().IsRegular() && filepath.Ext(rest) == ext && (strings.HasPrefix(rest, "before-") || strings.HasPrefix(rest, "format")) {
			copies = append(copies, filepath.Join(filepath.Dir(path), f.Name()))
		}
	}
	return copies, nil
}
