package main

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"club/quadrille/store"
)

// openClub opens the club file at a path, makes it if there is none, and removes what killed commands
// left beside it and among its backups.
func openClub(path string) (*store.Store, error) {
	kept, err := store.Open(path, store.CreatedBy(buildVersion()))
	if err != nil {
		return nil, err
	}
	store.Sweep(kept.Path(), backupFolder(kept.Path()))
	return kept, nil
}

// withBackup adds to the news that a club file is damaged which backup could take its place.
func withBackup(err error, path string) error {
	var damaged *store.DamagedError
	var foreign *store.NotOursError
	if !errors.As(err, &damaged) && !errors.As(err, &foreign) {
		return err
	}
	if backup := latestBackup(path); backup != "" {
		return fmt.Errorf("%w; or %s", err, backup)
	}
	return fmt.Errorf("%w; there is no good backup in %s", err, backupFolder(path))
}

// latestBackup says how to bring back the newest backup of a club file that is sound, "" if there is
// none.
func latestBackup(path string) string {
	if found, err := store.Resolve(path); err == nil {
		path = found
	}
	kept, err := store.Kept(path, backupFolder(path))
	if err != nil {
		return ""
	}
	for _, backup := range slices.Backward(kept) {
		if view, err := store.Look(backup); err == nil {
			return fmt.Sprintf("put the newest good backup (%s, %s) in its place with \"quadrille restore %s\"",
				counted(int(view.Last()), "event", "events"), madeAt(backup), backup)
		}
	}
	return ""
}

// madeAt says when a backup was made.
func madeAt(backup string) string {
	at, err := store.KeptAt(backup)
	if err != nil {
		return "of a time unknown"
	}
	return "of " + at.Local().Format(time.DateOnly+" 15:04")
}
