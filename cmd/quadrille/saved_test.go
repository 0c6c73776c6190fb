//go:build linux

package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"club/quadrille/session"
	"club/quadrille/store"
)

// A mishap is what befalls a club file while the desk has it open.
type mishap struct {
	name   string
	places func(t *testing.T) string // an empty folder for the file
	happen func(path string) error
	mend   func(path string) error // nil where the desk itself puts the file back
	says   string                  // on the screen
	after  string                  // after the desk, when it is left all the same
}

// mishaps are all of them. Those that need a disk of their own need the superuser.
var mishaps = []mishap{
	{"rm", folder, os.Remove, nil, "club file was removed", "the club file was removed, and was not written back"},
	{"mv over", folder, func(path string) error {
		return errors.Join(os.WriteFile(path+".2", []byte("mine"), 0o600), os.Rename(path+".2", path))
	}, nil, "another file stands there now, the club file was removed", "the club file was removed, and was not written back"},
	{"mv away", folder, func(path string) error { return os.Rename(path, filepath.Dir(path)+"/moved.qdb") }, nil, "moved.qdb", "and has everything"},
	{"rm -r of the folder", folder, func(path string) error { return os.RemoveAll(filepath.Dir(path)) }, nil, "club file was removed", "the club file was removed, and was not written back"},
	{"full disk", smallDisk, fillDisk, func(path string) error { return os.Remove(filepath.Join(filepath.Dir(path), "filler")) }, "the disk is full", "not saved, and lost: court 1: "},
	{"read-only remount", mountedDisk, func(path string) error {
		return systemCommand("mount", "-o", "remount,abort", filepath.Dir(path))
	}, nil, "the disk can only be read", "not saved, and lost: court 1: "},
}

func folder(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "club")
	if err := os.Mkdir(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	return dir
}

// smallDisk is a disk of half a megabyte in memory.
func smallDisk(t *testing.T) string {
	t.Helper()
	dir := folder(t)
	if err := syscall.Mount("quadrille-test", dir, "tmpfs", 0, "size=512k"); err != nil {
		t.Skip("this test needs a disk of its own, which this user may not mount:", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(dir, syscall.MNT_DETACH) })
	return dir
}

// fillDisk leaves no room on the disk of a file.
func fillDisk(path string) error {
	f, err := os.Create(filepath.Join(filepath.Dir(path), "filler"))
	if err != nil {
		return err
	}
	for err == nil {
		_, err = f.Write(make([]byte, 4096))
	}
	if errors.Is(err, syscall.ENOSPC) {
		err = nil
	}
	return errors.Join(err, f.Close())
}

// mountedDisk is a disk in a file, which the system can take for broken.
func mountedDisk(t *testing.T) string {
	t.Helper()
	dir, image := folder(t), filepath.Join(t.TempDir(), "image")
	err := os.WriteFile(image, nil, 0o600)
	if err == nil {
		err = os.Truncate(image, 8<<20)
	}
	for _, args := range [][]string{{"mkfs.ext4", "-q", image}, {"mount", "-o", "loop", image, dir}} {
		if err == nil {
			err = systemCommand(args...)
		}
	}
	if err != nil {
		t.Skip("this test needs a disk of its own, which this user may not make or mount:", err)
	}
	t.Cleanup(func() { _ = systemCommand("umount", "-l", dir) })
	return dir
}

// systemCommand runs a command of the system.
func systemCommand(args ...string) error {
	out, err := exec.Command(args[0], args[1:]...).CombinedOutput()
	if err != nil {
		return fmt.Errorf("%v: %w: %s", args, err, out)
	}
	return nil
}

// scoreIn is the score of the first game in a club file, "" if there is no file or no score.
func scoreIn(path string) string {
	view, err := store.Look(path)
	if err != nil {
		return ""
	}
	l, err := session.Open(view)
	if err != nil || l.Club().Night() == nil || l.Club().Night().Games[0].Final == nil {
		return ""
	}
	return l.Club().Night().Games[0].Final.String()
}

// deskWithMishap is a desk whose club file has come to harm, and the file's path.
func deskWithMishap(t *testing.T, bin program, m mishap) (*terminal, string) {
	t.Helper()
	data, err := os.ReadFile(fullHall(t, 2))
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(m.places(t), "club.qdb")
	// the unused end takes no room on the disk, so that a full one shows soon
	err = errors.Join(os.WriteFile(path, bytes.TrimRight(data, "\x00"), 0o600), os.Truncate(path, int64(len(data))))
	if err != nil {
		t.Fatal(err)
	}
	desk := bin.open(t, 160, 30, nil, "--data", path).Shows("[Courts]", "Court 1: ")
	if err := m.happen(path); err != nil {
		t.Fatal(err)
	}
	return desk, path
}

// typeUntilRefused types scores for court 1 until one is not saved. Of each that the screen calls saved,
// the file at the path must have it. A disk may have room for some more.
func typeUntilRefused(t *testing.T, desk *terminal, path, says string) {
	t.Helper()
	for i := range 60 {
		if i > 0 {
			desk.Press("left")
		}
		score := fmt.Sprintf("11-%d", i%10)
		desk.Type(strings.ReplaceAll(score, "-", " ")).Press("enter")
		desk.until("an answer to "+score, func(screen string) bool {
			_, saved, _ := strings.Cut(screen, "Saved: court 1")
			saved, _, _ = strings.Cut(saved, "\n")
			return strings.Contains(screen, "not saved") || strings.Contains(saved, score)
		})
		if strings.Contains(desk.Screen(), "not saved") {
			desk.Shows(says).Hides("Saved: court 1")
			return
		}
		if got := scoreIn(path); got != score {
			t.Fatalf("the screen says that %s is saved, the file has %q", score, got)
		}
	}
	t.Fatal("everything was saved")
}

// The screen never says "Saved" for what is not in the file at the path shown, whatever befalls the file;
// what can be saved in the end is, and then the exit code is 0; what cannot is named, before and after the
// end, and the exit code is 1.
func TestSavedIsOnlySaidOfWhatIsInTheFile(t *testing.T) {
	bin := build(t)
	for _, m := range mishaps {
		for way, test := range map[string]func(*testing.T, program, mishap){
			"mended": testMended, "left": testLeft, "copied": testCopied, "quit at once": testQuitAtOnce,
		} {
			t.Run(m.name+", "+way, func(t *testing.T) {
				t.Parallel() // a desk mostly waits for keys
				test(t, bin, m)
			})
		}
	}
}

func testMended(t *testing.T, bin program, m mishap) {
	if m.name == "read-only remount" {
		t.Skip("such a disk does not come back")
	}
	desk, path := deskWithMishap(t, bin, m)
	typeUntilRefused(t, desk, path, m.says)
	solve := "ctrl+b"
	if m.mend != nil {
		solve = "ctrl+r"
		if err := m.mend(path); err != nil {
			t.Fatal(err)
		}
	}
	desk.Press(solve).Shows("Saved: court 1").Hides("not saved")
	if scoreIn(path) == "" {
		t.Error("the screen says that the score is saved, and the file has none")
	}
	desk.Press("right").Type("11 9").Press("enter").Shows("Saved: court 2")
	if code := desk.Quit("q"); code != exitFine || !strings.Contains(desk.Raw(), "everything is saved in "+path) {
		t.Errorf("exit %d: %s", code, lastWords(desk))
	}
	if _, err := store.Check(path); err != nil {
		t.Error(err)
	}
}

func testLeft(t *testing.T, bin program, m mishap) {
	desk, path := deskWithMishap(t, bin, m)
	typeUntilRefused(t, desk, path, m.says)
	before := scoreIn(path)
	desk.Press("q").Shows("Not saved: court 1", "carry on").Press("x")
	if code := desk.Code(); code != exitRefused || !strings.Contains(lastWords(desk), m.after) || strings.Contains(lastWords(desk), "everything is saved") {
		t.Errorf("exit %d: %s, want %q", code, lastWords(desk), m.after)
	}
	if after := scoreIn(path); after != before {
		t.Errorf("the file has %q, and had %q", after, before)
	}
}

func testCopied(t *testing.T, bin program, m mishap) {
	desk, path := deskWithMishap(t, bin, m)
	typeUntilRefused(t, desk, path, m.says)
	copied := filepath.Join(t.TempDir(), "copy.qdb")
	desk.Press("q").Shows("Not saved: court 1").Press("w").Shows("Write a backup").Type(copied).Press("enter")
	desk.Shows("all of it is in the copy")
	if got := scoreIn(copied); got == "" || got == scoreIn(path) {
		t.Errorf("the copy has %q", got)
	}
	desk.Press("q").Shows("quit: it is in the copy", "carry on").Press("x")
	if code := desk.Code(); code != exitRefused || !strings.Contains(lastWords(desk), "all of it is in the copy "+copied) {
		t.Errorf("exit %d: %s", code, lastWords(desk))
	}
}

func testQuitAtOnce(t *testing.T, bin program, m mishap) {
	desk, path := deskWithMishap(t, bin, m)
	if strings.Contains(m.says, "disk") { // there is nothing to be saved, and the file is where it was
		if code := desk.Quit("q"); code != exitFine || !strings.Contains(lastWords(desk), "everything is saved in "+path) {
			t.Errorf("exit %d: %s", code, lastWords(desk))
		}
		return
	}
	desk.Press("q").Shows("The club file is not in its place").Press("s")
	if code := desk.Code(); code != exitFine || !strings.Contains(lastWords(desk), "everything is saved in "+path) {
		t.Errorf("exit %d: %s", code, lastWords(desk))
	}
	if r, err := store.Check(path); err != nil || !r.Sound() {
		t.Errorf("what was written back: %v %s", err, r)
	}
}

// A club file that another program cuts short under the desk is told in words, with the newest good backup,
// and nothing about it is called saved.
func TestAClubFileThatIsCutShortIsLeftWithItsBackup(t *testing.T) {
	path := clubWithBackups(t)
	desk := build(t).open(t, 160, 40, nil, "--data", path).Shows("Next: press n").Press("n").Shows("Open tonight").Press("enter").Shows("Saved: night opened")
	if err := os.Truncate(path, 20000); err != nil {
		t.Fatal(err)
	}
	desk.Type("Zoe").Press("enter").Shows("not saved: ", "is damaged", "cut short").Hides("othing else is lost")
	if code := desk.Press("ctrl+c").Shows("Not saved").Press("x").Code(); code != exitRefused {
		t.Errorf("exit %d", code)
	}
	told := strings.Join(strings.Fields(lastWords(desk)), " ")
	for _, want := range []string{"not saved: Zoe is new to the club", "is damaged", "put the newest good backup (", "quadrille restore "} {
		if !strings.Contains(told, want) {
			t.Errorf("it says %s, want %q", told, want)
		}
	}
	for _, lie := range []string{"everything is saved", "everything before it is saved"} {
		if strings.Contains(told, lie) {
			t.Errorf("it says %s", told)
		}
	}
}

// lastWords are what the program says when the desk is gone.
func lastWords(desk *terminal) string {
	raw := desk.Raw()
	if i := strings.LastIndex(raw, "\x1b[?1049l"); i >= 0 {
		raw = raw[i:]
	}
	return raw
}

// A desk that nobody can ask any more, since its terminal was closed, saves what it can by itself.
func TestAClosedTerminalLosesNoFile(t *testing.T) {
	bin := build(t)
	desk, path := deskWithMishap(t, bin, mishaps[0])
	typeUntilRefused(t, desk, path, mishaps[0].says)
	desk.Signal(syscall.SIGHUP)
	desk.Code()
	if scoreIn(path) == "" {
		t.Error("the score is lost with the file")
	}
	temporary := t.TempDir()
	demo := bin.open(t, 80, 24, []string{"TMPDIR=" + temporary}, "demo").Shows("q quit").Signal(syscall.SIGHUP)
	demo.Code()
	if kept, err := filepath.Glob(filepath.Join(temporary, "*")); err != nil || len(kept) > 0 {
		t.Errorf("the demo leaves %v behind (%v)", kept, err)
	}
}
