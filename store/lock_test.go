package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

func holdFile(path string) error {
	s, err := Open(path)
	if err != nil {
		return err
	}
	fmt.Println("open")
	untilToldToStop()
	return s.Close()
}

// raceForFile opens the file whenever it is told to and says whether it was the one that got it.
func raceForFile(path string) error {
	fmt.Println("ready")
	for round := ""; ; {
		if _, err := fmt.Scanln(&round); err != nil {
			return nil // the parent is done
		}
		s, err := Open(path, Patience(0))
		var locked *LockedError
		switch {
		case err == nil:
			fmt.Println("won")
		case errors.As(err, &locked):
			fmt.Println("locked", locked.PID)
		default:
			return err
		}
		fmt.Scanln(&round) // both have answered
		if s != nil {
			if err := s.Close(); err != nil {
				return err
			}
		}
		fmt.Println("closed")
	}
}

func TestSecondProcessIsToldWhoHasTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	c := start(t, "hold", path)
	if got := c.line(t); got != "open" {
		t.Fatal(got)
	}
	_, err := Open(path)
	var locked *LockedError
	if !errors.As(err, &locked) || locked.PID != c.cmd.Process.Pid {
		t.Fatalf("got %v, want process %d", err, c.cmd.Process.Pid)
	}
	if want := fmt.Sprintf("this file is open in another Quadrille (process %d)", locked.PID); !strings.HasPrefix(err.Error(), want) {
		t.Errorf("the error reads %q", err)
	}
	c.stdin.Close()
	c.cmd.Wait()
	mustOpen(t, path)
}

func TestSameProcessIsLockedOutToo(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	_, err := Open(path, Patience(0))
	var locked *LockedError
	if !errors.As(err, &locked) || locked.PID != os.Getpid() {
		t.Fatalf("got %v", err)
	}
	s.Close()
	if _, err := os.Stat(holderPath(path)); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the note is still there: %v", err)
	}
}

func TestOpenWaitsForAProgramThatIsClosing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	s := mustOpen(t, path)
	closing := make(chan struct{})
	go func() {
		<-closing
		s.Close()
	}()
	close(closing)
	mustOpen(t, path, Patience(10*time.Second))
}

func TestNotesOfTheDeadNameNobody(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	dead := start(t, "hold", filepath.Join(t.TempDir(), "other.qdb"))
	dead.line(t)
	dead.cmd.Process.Kill()
	dead.cmd.Wait()
	for name, note := range map[string]string{
		"dead":     strconv.Itoa(dead.cmd.Process.Pid) + "\n",
		"half":     strconv.Itoa(os.Getpid()),
		"garbage":  "me\n",
		"negative": "-1\n",
		"empty":    "",
	} {
		if err := os.WriteFile(holderPath(path), []byte(note), 0o600); err != nil {
			t.Fatal(err)
		}
		if pid := holder(path); pid != 0 {
			t.Errorf("%s: process %d", name, pid)
		}
	}
	if text := (&LockedError{Path: path}).Error(); !strings.Contains(text, "unknown") {
		t.Errorf("the error reads %q", text)
	}
	mustOpen(t, path)
	if pid := holder(path); pid != os.Getpid() {
		t.Errorf("the old note still stands: %d", pid)
	}
}

func TestOfTwoWhoRaceOneWins(t *testing.T) {
	const rounds = 200
	dir := t.TempDir()
	path := filepath.Join(dir, "club.qdb")
	racers := []*child{start(t, "race", path), start(t, "race", path)}
	for _, c := range racers {
		c.line(t)
	}
	for round := range rounds {
		if round < rounds/2 {
			os.Remove(path) // the first half also races to make the file
		}
		for _, c := range racers {
			fmt.Fprintln(c.stdin, "go")
		}
		won := 0
		for _, c := range racers {
			answer := c.line(t)
			if answer == "won" {
				won++
			} else if !strings.HasPrefix(answer, "locked") {
				t.Fatal(answer)
			}
		}
		if won != 1 {
			t.Fatalf("round %d: %d of 2 have the file", round, won)
		}
		for _, c := range racers {
			fmt.Fprintln(c.stdin, "done")
		}
		for _, c := range racers {
			if got := c.line(t); got != "closed" {
				t.Fatal(got)
			}
		}
	}
	left, err := filepath.Glob(filepath.Join(dir, ".*"))
	if err != nil || len(left) > 0 {
		t.Errorf("left behind: %v, %v", left, err)
	}
}

// Whoever waits for a file that is replaced meanwhile must get the new one: what is written to the
// old is gone.
func TestNobodyWritesToAFileThatWasReplaced(t *testing.T) {
	const writers, rounds = 4, 15
	path := filepath.Join(t.TempDir(), "club.qdb")
	errs := make(chan error, writers)
	for range writers {
		go func() {
			for range rounds {
				if err := appendAndCompact(path); err != nil {
					errs <- err
					return
				}
			}
			errs <- nil
		}()
	}
	for range writers {
		if err := <-errs; err != nil {
			t.Fatal(err)
		}
	}
	if got := mustOpen(t, path).Last(); got != writers*rounds {
		t.Errorf("of %d records, %d are there", writers*rounds, got)
	}
}

func appendAndCompact(path string) error {
	s, err := Open(path, Patience(time.Minute))
	if err != nil {
		return err
	}
	err = s.Append(actionAt(s.Last() + 1)[:1])
	return errors.Join(err, s.Compact(), s.Close())
}

func TestReplacedFileIsNotTheSame(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "club.qdb")
	for _, name := range []string{path, path + "2"} {
		if err := os.WriteFile(name, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if !sameFile(f, path) {
		t.Error("it is the same before")
	}
	if err := os.Rename(path+"2", path); err != nil {
		t.Fatal(err)
	}
	if sameFile(f, path) {
		t.Error("it is another after")
	}
}
