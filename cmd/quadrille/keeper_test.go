package main

import (
	"path/filepath"
	"testing"
	"time"

	"club/quadrille/session"
	"club/quadrille/store"
)

func TestBackupsAtOpenAndCloseOfANight(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	opened, err := store.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	k := &keeper{Store: opened}
	now := time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)
	desk, err := session.NewDesk(k, func() time.Time { return now }, newPersonID)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []session.Command{
		session.OpenNight{Settings: session.DefaultSettings(1), Courts: 1},
		session.AddGuest{Name: "Ada"},
		session.EndNight{},
	} {
		if _, err := desk.Do(c); err != nil {
			t.Fatal(err)
		}
		k.making.Wait()
	}
	if err := k.Close(); err != nil {
		t.Fatal(err)
	}
	kept, err := store.Kept(path, backupFolder(path))
	if err != nil || len(kept) != 2 {
		t.Fatalf("%d backups, %v, want one of the opening and one of the closing", len(kept), err)
	}
	report, err := store.Check(kept[1])
	if err != nil || !report.Sound() || report.Records != k.Last() {
		t.Errorf("the last backup: %+v, %v", report, err)
	}
}
