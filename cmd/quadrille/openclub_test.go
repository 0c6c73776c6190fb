package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"club/quadrille/store"
)

// The desk that cannot open its file names the rescue and the newest backup that is good, not one that is
// damaged as well; without any it says so.
func TestADamagedClubFileIsToldWithTheNewestGoodBackup(t *testing.T) {
	path := clubWithBackups(t)
	backups, err := store.Kept(path, backupFolder(path))
	if err != nil {
		t.Fatal(err)
	}
	damage(t, path)
	damage(t, backups[5])
	_, err = openClub(path)
	told := fmt.Sprint(withBackup(err, path))
	for _, want := range []string{"quadrille rescue " + path, "or put the newest good backup (", " events, of 2", "quadrille restore " + backups[4]} {
		if !strings.Contains(told, want) {
			t.Errorf("it says %s, want %q", told, want)
		}
	}
	if err := os.RemoveAll(backupFolder(path)); err != nil {
		t.Fatal(err)
	}
	if told := fmt.Sprint(withBackup(err, path)); !strings.Contains(told, "there is no good backup in "+backupFolder(path)) {
		t.Errorf("without a backup it says %s", told)
	}
	if other := errors.New("locked"); withBackup(other, path) != other {
		t.Error("what is no damage is told with a backup")
	}
}

// A file that is named and not there is called so, by each command that reads one.
func TestAMistypedFileIsCalledMissing(t *testing.T) {
	gone := filepath.Join(t.TempDir(), "clib.qdb")
	for _, args := range [][]string{{"check", gone}, {"rescue", gone, gone + ".new"}, {"restore", gone, "--data", gone + ".club"}} {
		if _, errs, code := quadrille(t, "", args...); code != exitRefused || !strings.Contains(errs, "there is no file "+gone) || strings.Contains(errs, "open the desk") {
			t.Errorf("%v: exit %d: %s", args, code, errs)
		}
	}
}
