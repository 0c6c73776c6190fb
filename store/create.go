package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	bolt "go.etcd.io/bbolt"
)

// Buckets of the file.
var (
	metaBucket = []byte("meta")
	logBucket  = []byte("log")
)

// ensure makes an empty club file at path, and its folder, unless one is there. The new file is
// made whole beside it, flushed, and only then given its name: bbolt's files do not survive a
// power cut while they are being made. Should another process be quicker, its file is as good.
func ensure(path, createdBy string) error {
	if _, err := os.Lstat(path); err == nil || !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	fresh, err := makeBeside(path, newHead(createdBy))
	if err != nil {
		return err
	}
	defer os.Remove(fresh)
	if err := linkNew(fresh, path); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	return syncDir(filepath.Dir(path))
}

// makeBeside makes an empty club file of a passing name in path's folder.
func makeBeside(path string, head Head) (string, error) {
	f, err := createBeside(path)
	if err != nil {
		return "", err
	}
	name := f.Name()
	f.Close()
	if err := initialise(name, head); err != nil {
		os.Remove(name)
		return "", err
	}
	return name, nil
}

// initialise writes the head and empty buckets into an empty file and flushes it.
func initialise(name string, head Head) error {
	db, err := bolt.Open(name, 0o600, boltOptions())
	if err != nil {
		return err
	}
	err = db.Update(func(tx *bolt.Tx) error {
		meta, err := tx.CreateBucket(metaBucket)
		if err != nil {
			return err
		}
		if err := meta.Put(headKey, head.encode()); err != nil {
			return err
		}
		_, err = tx.CreateBucket(logBucket)
		return err
	})
	return errors.Join(err, db.Close())
}

// linkNew gives a finished file its name. The error is fs.ErrExist if that name is taken. Where
// the disk knows no links (FAT, some network disks), a plain rename has to do, with a gap of
// microseconds in which two first starts at once could meet.
func linkNew(from, to string) error {
	err := os.Link(from, to)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	if _, err := os.Lstat(to); err == nil {
		return fs.ErrExist
	}
	return os.Rename(from, to)
}
