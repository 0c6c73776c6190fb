package main

import (
	"errors"
	"path/filepath"
	"slices"
	"sync"
	"time"

	"club/quadrille/session"
	"club/quadrille/store"
)

// keptBackups is how many rolling backups of a data file are kept.
const keptBackups = 10

// backupFolder is where the rolling backups of a data file lie.
func backupFolder(path string) string { return filepath.Join(filepath.Dir(path), "backups") }

// keeper is a data file that looks after itself whenever a night is opened or closed: it makes a
// backup, keeps a snapshot of the nights that are over, and is compacted when that pays. All of this
// happens beside the desk, which does not wait for it.
type keeper struct {
	*store.Store

	making sync.WaitGroup
	turn   sync.Mutex // held while the file looks after itself: once at a time
	mu     sync.Mutex
	failed error // of what the file did for itself; guarded by mu
}

// Append implements session.Log.
func (k *keeper) Append(recs []session.Record) error {
	if err := k.Store.Append(recs); err != nil {
		return err
	}
	has := func(kind string) bool {
		return slices.ContainsFunc(recs, func(r session.Record) bool { return r.Kind == kind })
	}
	switch {
	case has("NightClosed"):
		k.making.Go(func() { k.care(k.compact, k.keepSnapshot, k.backup) })
	case has("NightOpened"):
		k.making.Go(func() { k.care(k.keepSnapshot, k.backup) })
	}
	return nil
}

// care does what is to be done, one after the other. What fails does not keep the rest from being
// done.
func (k *keeper) care(steps ...func() error) {
	k.turn.Lock()
	defer k.turn.Unlock()
	for _, step := range steps {
		if err := step(); err != nil {
			k.mu.Lock()
			k.failed = errors.Join(k.failed, err)
			k.mu.Unlock()
		}
	}
}

// compact writes the file anew if more than half of it is free.
func (k *keeper) compact() error {
	r, err := k.Report()
	if err != nil || !r.Sparse() {
		return err
	}
	return k.Compact()
}

// keepSnapshot keeps a snapshot of the nights before the newest, made from all of the records.
func (k *keeper) keepSnapshot() error { return keepSnapshot(k.Store) }

func (k *keeper) backup() error {
	_, err := k.Keep(backupFolder(k.Path()), keptBackups, time.Now())
	return err
}

// Close waits for what the file does for itself, closes it, and tells what went wrong with either.
func (k *keeper) Close() error {
	k.making.Wait()
	return errors.Join(k.failed, k.Store.Close())
}
