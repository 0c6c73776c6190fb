package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/simulation"
	"club/quadrille/store"
)

// fileWithANight is a club file with one long night in it that is closed.
func fileWithANight(t *testing.T) string {
	t.Helper()
	log := &session.MemoryLog{}
	night := simulation.Night{
		People: simulation.Invented(16, 1), Courts: 4, Rounds: 9, Flow: session.Rounds, ByRally: 4, Seed: 1,
		Scoring: scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2},
	}
	if _, err := simulation.Run(t.Context(), log, night, nil); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "club.qdb")
	err := work(path, func(desk *session.Desk) error {
		var theirs []session.Record
		for r := range log.Records(1) {
			theirs = append(theirs, r)
		}
		_, _, err := desk.Join(theirs, session.AskSame)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// keep does commands on a club file that looks after itself, as the desk has it.
func keep(t *testing.T, path string, commands ...session.Command) {
	t.Helper()
	opened, err := store.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	k := &keeper{Store: opened}
	desk, err := session.NewDesk(k, time.Now, newPersonID)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range commands {
		if _, err := desk.Do(c); err != nil {
			t.Fatalf("%T: %v", c, err)
		}
	}
	if err := k.Close(); err != nil {
		t.Fatal(err)
	}
}

// snapshotIn is the snapshot of a club file.
func snapshotIn(t *testing.T, path string) session.Snapshot {
	t.Helper()
	view, err := store.Look(path)
	if err != nil {
		t.Fatal(err)
	}
	s, ok := view.Snapshot()
	if !ok {
		t.Fatal("the file has no snapshot")
	}
	return s
}

// A snapshot is kept when a night opens; a check compares it with the records, and a compaction
// replaces one that is wrong.
func TestCheckComparesTheSnapshotWithTheRecords(t *testing.T) {
	path := fileWithANight(t)
	keep(t, path, session.OpenNight{Settings: session.DefaultSettings(1), Courts: 1})
	good := snapshotIn(t, path)
	check := func(wantCode int, words ...string) {
		t.Helper()
		out, errs, code := quadrille(t, "", "check", path)
		for _, w := range words {
			if code != wantCode || !strings.Contains(out+errs, w) {
				t.Fatalf("check exits with %d and says\n%s%s\nwant %d and %q", code, out, errs, wantCode, w)
			}
		}
	}
	check(exitFine, "nothing is wrong", "played again: 16 people, 2 nights, 36 games", "is what the events come to")

	kept, err := store.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	wrong := session.Snapshot{Seq: good.Seq, State: bytes.Replace(good.State, []byte(`"P01"`), []byte(`"P99"`), 1)}
	if err := kept.KeepSnapshot(wrong); err != nil {
		t.Fatal(err)
	}
	if err := kept.Close(); err != nil {
		t.Fatal(err)
	}
	check(exitRefused, "nothing is wrong", "wrong: the snapshot up to event", "remove it with \"quadrille compact\"")

	if _, errs, code := quadrille(t, "", "compact", "--data", path); code != exitFine || !strings.Contains(errs, "events in ") {
		t.Fatalf("compact exits with %d: %s", code, errs)
	}
	check(exitFine, "is what the events come to")
	if again := snapshotIn(t, path); again.Seq != good.Seq || !bytes.Equal(again.State, good.State) {
		t.Errorf("the snapshot that is made anew holds %d records, want the same %d", again.Seq, good.Seq)
	}
}

// A file of which more than half is free is written anew when the night closes, and not before.
func TestAFileIsCompactedAtTheCloseWhenItPays(t *testing.T) {
	path := fileWithANight(t)
	keep(t, path, session.OpenNight{Settings: session.DefaultSettings(1), Courts: 1})
	good := snapshotIn(t, path)
	kept, err := store.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, size := range []int{4 << 20, 1} { // what a far larger club would leave behind
		if err := kept.KeepSnapshot(session.Snapshot{Seq: good.Seq, State: make([]byte, size)}); err != nil {
			t.Fatal(err)
		}
	}
	before, err := kept.Report()
	if err != nil || !before.Sparse() {
		t.Fatalf("the file is not sparse: %s%v", before, err)
	}
	if err := kept.Close(); err != nil {
		t.Fatal(err)
	}
	keep(t, path, session.AddGuest{Name: "Ada"})
	if r, err := store.Check(path); err != nil || !r.Sparse() {
		t.Fatalf("the file was compacted in the middle of a night: %s%v", r, err)
	}
	keep(t, path, session.EndNight{})
	r, err := store.Check(path)
	if err != nil || !r.Sound() || r.Sparse() || r.Bytes > before.Bytes/2 {
		t.Errorf("after the close: %s%v", r, err)
	}
	if s := snapshotIn(t, path); !bytes.Equal(s.State, good.State) {
		t.Error("the snapshot after the close is not the one that the records give")
	}
}

// A forgotten name is in no byte of any file that the program made: the club file with its snapshot,
// the backups of the desk, what a restore put aside.
func TestAForgottenNameIsInNoFile(t *testing.T) {
	const name = `"P01"`
	path := fileWithANight(t)
	keep(t, path, session.OpenNight{Settings: session.DefaultSettings(1), Courts: 1}, session.EndNight{})
	backups, err := store.Kept(path, backupFolder(path))
	if err != nil || len(backups) != 2 {
		t.Fatalf("%d backups, %v", len(backups), err)
	}
	if _, errs, code := quadrille(t, "", "restore", backups[1], "--data", path); code != exitFine {
		t.Fatal(errs)
	}
	before := filesWith(t, filepath.Dir(path), name)
	if len(before) != 4 {
		t.Fatalf("the name is in %q, want the file, two backups and what was put aside", before)
	}
	if _, errs, code := quadrille(t, "", "forget", "P01", "--yes", "--data", path); code != exitFine {
		t.Fatal(errs)
	}
	if left := filesWith(t, filepath.Dir(path), name); len(left) > 0 {
		t.Errorf("the name is still in %q", left)
	}
	for _, file := range before {
		if _, errs, code := quadrille(t, "", "check", file); code != exitFine {
			t.Errorf("%s: %s", file, errs)
		}
	}
}

// filesWith lists the files below a folder that hold a text.
func filesWith(t *testing.T, dir, text string) []string {
	t.Helper()
	var out []string
	err := filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		if bytes.Contains(data, []byte(text)) {
			out = append(out, path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}
