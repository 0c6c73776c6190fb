package store

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// keptStamp is the time in the name of a kept backup, so that names in order are times in order.
const keptStamp = "20060102T150405.000Z"

// Keep makes a backup in dir under a name that tells the time now, and takes the oldest of those
// that Keep made of this file away until no more than most are left. It gives the backup's path.
// dir is made, mode 0700, if there is none.
func (s *Store) Keep(dir string, most int, now time.Time) (string, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", &FileError{"making", dir, err}
	}
	stem, ext := keptName(s.path)
	to := filepath.Join(dir, stem+now.UTC().Format(keptStamp)+ext)
	Sweep(s.path, dir)
	if err := s.Backup(to); err != nil {
		return "", err
	}
	kept, err := Kept(s.path, dir)
	if err != nil {
		return to, err
	}
	kept = slices.DeleteFunc(kept, func(name string) bool { return name == to })
	for len(kept) > max(most-1, 0) {
		if err := os.Remove(kept[0]); err != nil {
			return to, &FileError{"removing", kept[0], err}
		}
		kept = kept[1:]
	}
	return to, nil
}

// Kept lists the backups that [Store.Keep] made in dir of the file at path, oldest first.
func Kept(path, dir string) ([]string, error) {
	files, err := os.ReadDir(dir)
	if err != nil {
		return nil, &FileError{"reading", dir, err}
	}
	stem, ext := keptName(path)
	var out []string
	for _, f := range files {
		stamp, isOurs := strings.CutPrefix(f.Name(), stem)
		stamp, whole := strings.CutSuffix(stamp, ext)
		if _, err := time.Parse(keptStamp, stamp); isOurs && whole && err == nil {
			out = append(out, filepath.Join(dir, f.Name()))
		}
	}
	return out, nil // ReadDir sorts by name
}

// KeptAt is when [Store.Keep] made a backup, as its name tells.
func KeptAt(backup string) (time.Time, error) {
	name := strings.TrimSuffix(filepath.Base(backup), filepath.Ext(backup))
	return time.Parse(keptStamp, name[strings.LastIndexByte(name, '-')+1:])
}

// keptName is what the names of kept backups begin and end with.
func keptName(path string) (stem, ext string) {
	ext = filepath.Ext(path)
	return strings.TrimSuffix(filepath.Base(path), ext) + "-", ext
}
