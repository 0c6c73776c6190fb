package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"sync"
	"time"

	"club/quadrille/session"
	"club/quadrille/store"
)

// keptBackups is how many rolling backups of a club file are kept.
const keptBackups = 10

// backupFolder is where the rolling backups of a club file lie.
func backupFolder(path string) string { return filepath.Join(filepath.Dir(path), "backups") }

// keeper is a club file that looks after itself whenever a night is opened or closed: it makes a
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
	if err == nil && r.Sparse() {
		err = k.Compact()
	}
	if err != nil {
		return fmt.Errorf("the room that old pages take could not be given back: %w", err)
	}
	return nil
}

// keepSnapshot keeps a snapshot of the nights before the newest, made from all of the records.
func (k *keeper) keepSnapshot() error {
	if err := keepSnapshot(k.Store); err != nil {
		return fmt.Errorf("what quickens the next start could not be written: %w", err)
	}
	return nil
}

func (k *keeper) backup() error {
	if _, err := k.Keep(backupFolder(k.Path()), keptBackups, time.Now()); err != nil {
		return fmt.Errorf("the backup could not be made: %w", err)
	}
	return nil
}

// copyTo copies the club file to a new file, and does there what could not be saved, unless that is nil.
func (k *keeper) copyTo(desk *session.Desk, to string, also session.Command) (err error) {
	if err := k.Backup(to); err != nil || also == nil {
		return err
	}
	copied, err := store.Open(to)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, copied.Close()) }()
	return desk.DoIn(copied, also)
}

// cared waits for what the file does for itself, and tells what of it went wrong.
func (k *keeper) cared() error {
	k.making.Wait()
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.failed
}

// Close waits for what the file does for itself, closes it, and tells what went wrong with either.
func (k *keeper) Close() error { return errors.Join(k.cared(), k.Store.Close()) }
