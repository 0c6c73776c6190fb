package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	bolt "go.etcd.io/bbolt"
)

// makeFilled makes a file of frames under a passing name beside path, and reads all of it.
func makeFilled(path string, head Head, frames []frame) (string, error) {
	head.Schema = Schema
	fresh, err := makeBeside(path, head)
	if err != nil {
		return "", &FileError{"writing", path, err}
	}
	if err = fill(fresh, head, frames); err != nil {
		err = &FileError{"writing", path, err}
	} else {
		err = checkFilled(fresh, len(frames))
	}
	if err != nil {
		os.Remove(fresh)
		return "", err
	}
	return fresh, nil
}

func checkFilled(name string, records int) error {
	r, err := checkCopy(name, filepath.Base(name))
	if err == nil && r.Records != uint64(records) {
		err = fmt.Errorf("the new file has %d events instead of %d: try again on another disk", r.Records, records)
	}
	return err
}

// fill puts frames into a new file, chained to its head and to each other. Which of them were
// appended together stays as it was.
func fill(name string, head Head, frames []frame) error {
	db, err := bolt.Open(name, 0o600, boltOptions())
	if err != nil {
		return err
	}
	const atOnce = 4096 // records in one transaction, to bound its memory
	seed := head.seed()
	sum := seed
	for part := range slices.Chunk(frames, atOnce) {
		if sum, err = fillPart(db, seed, sum, part); err != nil {
			break
		}
	}
	return errors.Join(err, db.Close())
}

func fillPart(db *bolt.DB, seed, sum uint32, part []frame) (uint32, error) {
	entries := make([]entry, len(part))
	for i, f := range part {
		f.before, f.layout, f.seed = sum, 0, seed
		var err error
		if entries[i].key, entries[i].frame, err = f.encode(); err != nil {
			return sum, err
		}
		sum = f.sum
	}
	return sum, commit(db, entries)
}
