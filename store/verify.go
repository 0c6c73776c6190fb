package store

import (
	"fmt"
	"io"
	"os"

	bolt "go.etcd.io/bbolt"
)

// A verdict is what reading all of a file has shown.
type verdict struct {
	head Head
	last uint64 // Seq of the newest record
	sum  uint32 // its checksum
}

// verifyFile reads all of a locked file.
func verifyFile(f *os.File, path string) (verdict, error) {
	copied, err := os.CreateTemp("", "quadrille-verify-*")
	if err != nil {
		return verdict{}, err
	}
	defer os.Remove(copied.Name())
	defer copied.Close()
	if _, err := io.Copy(copied, io.NewSectionReader(f, 0, 1<<40)); err != nil {
		return verdict{}, err
	}
	db, err := bolt.Open(copied.Name(), 0o600, boltOptions())
	if err != nil {
		return verdict{}, &NotOursError{Path: path, Why: err.Error()}
	}
	defer db.Close()
	var v verdict
	err = db.View(func(tx *bolt.Tx) error {
		meta, log := tx.Bucket(metaBucket), tx.Bucket(logBucket)
		if meta == nil || log == nil {
			return &NotOursError{Path: path, Why: "it holds something else"}
		}
		if v.head, err = decodeHead(meta.Get(headKey)); err != nil {
			return err
		}
		v.sum = v.head.seed()
		return log.ForEach(func(key, value []byte) error {
			f, err := decodeFrame(key, value)
			if err == nil && (f.Seq != v.last+1 || f.before != v.sum) {
				err = fmt.Errorf("it does not follow record %d", v.last)
			}
			if err != nil {
				return &DamagedError{Path: path, Faults: []string{fmt.Sprintf("record %d: %v", v.last+1, err)}}
			}
			v.last, v.sum = f.Seq, f.sum
			return nil
		})
	})
	return v, err
}
