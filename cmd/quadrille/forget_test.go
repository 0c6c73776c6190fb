package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
	"club/quadrille/store"
)

// clubWithBackups is a club file with some nights of P01, and backups of them.
func clubWithBackups(t *testing.T) string {
	t.Helper()
	path := fileWithANight(t)
	for range 3 {
		keep(t, path, session.OpenNight{Name: "Birthday of P01", Settings: session.DefaultSettings(1), Courts: 1}, session.EndNight{})
	}
	backups, err := store.Kept(path, backupFolder(path))
	if err != nil || len(backups) != 6 {
		t.Fatalf("%d backups, %v", len(backups), err)
	}
	return path
}

// copyFolder copies all files of a folder and of its folders.
func copyFolder(t *testing.T, from string) string {
	t.Helper()
	to := t.TempDir()
	if err := os.CopyFS(to, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
	return to
}

// forgetAnd runs forget and gives what it says and its exit code.
func forgetAnd(t *testing.T, path string) (string, int) {
	t.Helper()
	_, errs, code := quadrille(t, "", "forget", "P01", "--yes", "--data", path)
	return errs, code
}

// forget is killed at 3 moments (50 with QUADRILLE_LONG=1) from its first word to after its end, and
// then run again: no byte of the name is left in the folder, and every file is sound.
func TestForgetKilledAtAnyMomentCanBeRunAgain(t *testing.T) {
	kills := 3
	if os.Getenv("QUADRILLE_LONG") == "1" {
		kills = 50
	}
	folder := filepath.Dir(clubWithBackups(t))
	whole := copyFolder(t, folder)
	began := time.Now()
	if out, err := command(t, "forget", "P01", "--yes", "--data", filepath.Join(whole, "club.qdb")).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	took := time.Since(began)
	half := 0
	dice := rand.New(rand.NewPCG(7, 8))
	for i := range kills {
		trial := copyFolder(t, folder)
		path := filepath.Join(trial, "club.qdb")
		cmd := command(t, "forget", "P01", "--yes", "--data", path)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(took*time.Duration(i)/time.Duration(kills) + time.Duration(dice.IntN(3000))*time.Microsecond)
		_ = cmd.Process.Kill() // it may have ended by itself
		_ = cmd.Wait()
		if left := filesWith(t, trial, `"P01"`); len(left) > 0 && len(left) < 7 {
			half++
		}
		said, code := forgetAnd(t, path)
		if code != exitFine && !strings.Contains(said, "neither the club file nor a backup knows anybody called P01") {
			t.Fatalf("kill %d: run again it says %s", i, said)
		}
		for _, name := range []string{`"P01"`, "of P01"} {
			if left := filesWith(t, trial, name); len(left) > 0 {
				t.Fatalf("kill %d: %s is still in %q (%s)", i, name, left, said)
			}
		}
		if left, err := filepath.Glob(filepath.Join(trial, "*", ".*")); err != nil || len(left) > 0 {
			t.Fatalf("kill %d: left behind: %q", i, left)
		}
		for _, file := range filesWith(t, trial, "quadrille club") {
			if r, err := store.Check(file); err != nil || !r.Sound() {
				t.Fatalf("kill %d: %v %s", i, err, r)
			}
		}
	}
	t.Logf("of %d kills %d left the name in some files and not in others", kills, half)
}

// A backup that cannot be written anew is named, the rest is done all the same, and nothing is called
// forgotten until all of it is.
func TestForgetIsHonestAboutWhatItCannotRewrite(t *testing.T) {
	path := clubWithBackups(t)
	backups, err := store.Kept(path, backupFolder(path))
	if err != nil {
		t.Fatal(err)
	}
	held, err := store.Open(backups[1])
	if err != nil {
		t.Fatal(err)
	}
	damage(t, backups[3])
	said, code := forgetAnd(t, path)
	if code != exitRefused || !strings.Contains(said, backups[1]) || !strings.Contains(said, backups[3]) || strings.Contains(said, "is forgotten") {
		t.Fatalf("exit %d: %s", code, said)
	}
	if left := filesWith(t, filepath.Dir(path), `"P01"`); len(left) != 2 {
		t.Errorf("the name is left in %q", left)
	}
	if err := held.Close(); err != nil {
		t.Fatal(err)
	}
	if said, code = forgetAnd(t, path); code != exitRefused || strings.Contains(said, backups[1]) || !strings.Contains(said, backups[3]) {
		t.Errorf("run again: exit %d: %s", code, said)
	}
	if err := os.Remove(backups[3]); err != nil {
		t.Fatal(err)
	}
	if left := filesWith(t, filepath.Dir(path), `"P01"`); len(left) != 0 {
		t.Errorf("the name is left in %q", left)
	}
}

// damage makes a club file unreadable, with its names still in it.
func damage(t *testing.T, path string) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	copy(data[os.Getpagesize()*2:], make([]byte, os.Getpagesize()))
	copy(data, make([]byte, 2*os.Getpagesize()))
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

// What an older program did, the file first and then killed, is mended too: the name is found though
// only backups have it, and what that program left half made is gone.
func TestANameThatOnlyBackupsHaveIsForgotten(t *testing.T) {
	path := clubWithBackups(t)
	backed := copyFolder(t, backupFolder(path))
	if said, code := forgetAnd(t, path); code != exitFine {
		t.Fatal(said)
	}
	if err := os.RemoveAll(backupFolder(path)); err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(backupFolder(path), os.DirFS(backed)); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{".club.qdb.new-31", ".quadrille-12", "backups/.club-20261125T190000.000Z.qdb.new-5"} {
		if err := os.WriteFile(filepath.Join(filepath.Dir(path), name), []byte(`"P01"`), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if _, errs, code := quadrille(t, "", "forget", "P01", "--data", path); code != exitRefused || !strings.Contains(errs, "P01 would become Somebody 1 for good, in 6 backups: add --yes") {
		t.Fatalf("exit %d: %s", code, errs)
	}
	if said, code := forgetAnd(t, path); code != exitFine || !strings.Contains(said, "P01 is forgotten in 6 backups: results stay") {
		t.Fatalf("exit %d: %s", code, said)
	}
	if left := filesWith(t, filepath.Dir(path), `"P01"`); len(left) > 0 {
		t.Errorf("the name is still in %q", left)
	}
}

// Whatever command writes next removes what killed ones left, beside the club file and among its backups.
func TestEveryWritingCommandSweeps(t *testing.T) {
	backup := filepath.Join(t.TempDir(), "backup.qdb")
	source := clubWithBackups(t)
	if _, errs, code := quadrille(t, "", "backup", backup, "--data", source); code != exitFine {
		t.Fatal(errs)
	}
	roster := filepath.Join(t.TempDir(), "roster.csv")
	if err := os.WriteFile(roster, []byte("name\nZoe\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{"compact"},
		{"restore", backup},
		{"import", roster},
		{"import", backup},
		{"merge", "P01", "Nobody"},
		{"forget", "P02", "--yes"},
	} {
		path := filepath.Join(copyFolder(t, filepath.Dir(source)), "club.qdb")
		for _, name := range []string{".club.qdb.new-31", ".quadrille-12", "backups/.club-20261125T190000.000Z.qdb.new-5"} {
			if err := os.WriteFile(filepath.Join(filepath.Dir(path), name), []byte("left over"), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		quadrille(t, "", append(args, "--data", path)...)
		if left := filesWith(t, filepath.Dir(path), "left over"); len(left) > 0 {
			t.Errorf("%v leaves %q", args, left)
		}
	}
}

// Behind a symbolic link the real file and its backups lose the name, and the link stays.
func TestForgetBehindALink(t *testing.T) {
	path := clubWithBackups(t)
	link := filepath.Join(t.TempDir(), "link.qdb")
	if err := os.Symlink(path, link); err != nil {
		t.Skip("this system has no symbolic links:", err)
	}
	for i, args := range [][]string{{"forget", "P01", "--yes"}, {"compact"}} {
		if _, errs, code := quadrille(t, "", append(args, "--data", link)...); code != exitFine {
			t.Fatalf("%d: %s", i, errs)
		}
		if to, err := os.Readlink(link); err != nil || to != path {
			t.Fatalf("the link leads to %q (%v)", to, err)
		}
	}
	if left := filesWith(t, filepath.Dir(path), `"P01"`); len(left) > 0 {
		t.Errorf("the name is still in %q", left)
	}
	if _, err := os.Stat(fmt.Sprintf("%s/backups", filepath.Dir(link))); err == nil {
		t.Error("backups were made beside the link")
	}
}
