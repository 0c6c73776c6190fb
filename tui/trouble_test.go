package tui

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"club/quadrille/session"
)

// fullDisk is a log whose disk takes nothing while it is full. It may have written what it says it
// has not.
type fullDisk struct {
	*session.MemoryLog
	full, lands bool
}

func (d *fullDisk) Append(recs []session.Record) error {
	if d.full && !d.lands {
		return errDiskFull
	}
	return errors.Join(d.MemoryLog.Append(recs), map[bool]error{true: errDiskFull}[d.full])
}

var errDiskFull = errors.New("writing /home/organiser/.local/share/quadrille/club.qdb: the disk is full: make room, then try again")

// troubled is a stage with a round called whose disk is full from now on.
func troubled(t *testing.T) (*stage, *fullDisk) {
	t.Helper()
	s := called(t, 2, 8)
	disk, people := &fullDisk{MemoryLog: s.log}, 0
	var err error
	s.desk, err = session.NewDesk(disk, func() time.Time { return s.now }, func() session.PersonID {
		people++
		return session.PersonID(fmt.Sprintf("late%03d", people))
	})
	if err != nil {
		t.Fatal(err)
	}
	disk.full = true
	return s.reopen(), disk
}

// While the disk is full the desk stays open, says so until it is solved, takes no other action, and
// does the one that failed as soon as it is told to try again.
func TestAFullDiskIsShownUntilItIsSolved(t *testing.T) {
	s, disk := troubled(t)
	last := s.log.Last()
	s.press("117", "enter").shows("! not saved: …", "the disk is full: make room, then try again", "ctrl+r tries again").hides("W 11")
	s.pass(10).send(tickMsg{}).press("tab", "tab", "c").shows("the disk is full")
	s.press("11 9", "enter").shows("the last action is not saved yet")
	s.press("esc", "u").shows("not saved yet")
	s.press("esc").shows("the disk is full").press("ctrl+r").shows("the disk is full")
	if s.log.Last() != last || s.final(1) != "" || s.quit {
		t.Fatalf("the full disk took %d records, the score is %q", s.log.Last()-last, s.final(1))
	}
	disk.full = false
	s.shows("the disk is full").press("ctrl+r").hides("disk is full", "ctrl+r").shows("Saved: court 1")
	if s.final(1) != "11-7" {
		t.Errorf("after trying again the score is %q, want 11-7", s.final(1))
	}
}

// What was typed ahead of a failure was meant for another state: it is dropped, not done out of turn.
func TestWhatWasTypedAfterAFailureIsDropped(t *testing.T) {
	s, disk := troubled(t)
	s.slow = true
	s.press("117", "enter").press("11 9", "enter").press("115", "enter")
	disk.full = true
	s.release()
	if len(s.held) != 0 {
		t.Fatal("another action was sent after the one that failed")
	}
	disk.full = false
	s.slow = false
	s.press("ctrl+r")
	if s.final(1) != "11-7" || s.final(2) != "" {
		t.Errorf("the scores are %q and %q, want 11-7 and none", s.final(1), s.final(2))
	}
}

// An action may be given up; the night goes on without it.
func TestAnUnsavedActionCanBeGivenUp(t *testing.T) {
	s, disk := troubled(t)
	s.press("117", "enter", "esc").shows("given up: the last action was not done").hides("disk is full")
	disk.full = false
	s.press("esc", "esc").press("11 9", "enter").shows("Saved: court 1")
	if s.final(1) != "11-9" {
		t.Errorf("the score is %q, want 11-9", s.final(1))
	}
}

// A disk may say that it failed and have written all the same: trying again then does not do it
// twice.
func TestAnActionThatWasSavedAfterAllIsNotDoneTwice(t *testing.T) {
	s, disk := troubled(t)
	disk.lands = true
	s.press("enter", "a").shows("the disk is full") // a rally on court 1
	disk.full = false
	s.press("ctrl+r").shows("turns out to be saved")
	if got := len(s.night().Games[0].Rallies); got != 1 {
		t.Errorf("%d rallies are noted, one was won", got)
	}
}

// The night can be saved elsewhere while the disk is full.
func TestACopyCanBeWrittenWhileTheDiskIsFull(t *testing.T) {
	s, _ := troubled(t)
	var copied string
	s.m.options.Backup = func(path string) error { copied = path; return nil }
	s.press("117", "enter").shows("o, then w", "writes a copy elsewhere").press("o", "w").press("/media/stick/c.qdb", "enter")
	if copied != "/media/stick/c.qdb" {
		t.Fatalf("the copy went to %q:\n%s", copied, s.m.View())
	}
	s.shows("the disk is full", "ctrl+r")
}

// What an error quotes from a file never acts upon the terminal.
func TestAnErrorCannotActUponTheTerminal(t *testing.T) {
	s := called(t, 1, 4)
	s.m.refuse(errors.New("roster line 2: \x1b[2J\x1b]0;owned\x07Ada\u202e\nstands on line 1"))
	s.shows("roster line 2: Ada stands on line 1").hides("\x1b", "\u202e", "owned")
}
