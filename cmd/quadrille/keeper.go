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

// keeper is a data file that makes a backup of itself whenever a night is opened or closed. The
// backup is made and checked beside the desk, which does not wait for it.
type keeper struct {
	*store.Store

	making sync.WaitGroup
	mu     sync.Mutex
	failed error // of the backups; guarded by mu
}

// Append implements session.Log.
func (k *keeper) Append(recs []session.Record) error {
	if err := k.Store.Append(recs); err != nil {
		return err
	}
	if slices.ContainsFunc(recs, func(r session.Record) bool { return r.Kind == "NightOpened" || r.Kind == "NightClosed" }) {
		k.making.Go(k.keep)
	}
	return nil
}

func (k *keeper) keep() {
	_, err := k.Keep(backupFolder(k.Path()), keptBackups, time.Now())
	k.mu.Lock()
	defer k.mu.Unlock()
	k.failed = errors.Join(k.failed, err)
}

// Close waits for backups, closes the file, and tells what went wrong with either.
func (k *keeper) Close() error {
	k.making.Wait()
	return errors.Join(k.failed, k.Store.Close())
}
