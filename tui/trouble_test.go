package tui

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"club/quadrille/session"
)

// fullDisk is a log whose disk takes nothing while it is full. It may have written what it says it
// has not.
type fullDisk struct {
	*session.MemoryLog
	full, lands bool
	why         error // what it says, errDiskFull if nil
}

func (d *fullDisk) Append(recs []session.Record) error {
	if !d.full {
		return d.MemoryLog.Append(recs)
	}
	why := d.why
	if why == nil {
		why = errDiskFull
	}
	if d.lands {
		return errors.Join(d.MemoryLog.Append(recs), why)
	}
	return why
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
	s.press("117", "enter").shows("! not saved: …", "the disk is full: make room, then try again", "ctrl+r tries again").hides("11 ✓")
	s.pass(10).send(tickMsg{}).press("tab", "tab", "c").shows("the disk is full")
	s.press("11 9", "enter").shows("the last action is not saved yet")
	s.press("ctrl+r").shows("the disk is full").hides("not saved yet")
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
	var also session.Command
	s.m.options.Backup = func(path string, c session.Command) error { copied, also = path, c; return nil }
	s.press("117", "enter").shows("o, then w", "writes a copy elsewhere").press("o", "w").shows("esc closes this box")
	s.press("/media/stick/c.qdb", "enter")
	if _, ok := also.(session.FinishGame); copied != "/media/stick/c.qdb" || !ok {
		t.Fatalf("the copy went to %q, with %T:\n%s", copied, also, s.m.View())
	}
	s.shows("all of it is in the copy /media/stick/c.qdb", "ctrl+r")
}

// What an error quotes from a file never acts upon the terminal.
func TestAnErrorCannotActUponTheTerminal(t *testing.T) {
	s := called(t, 1, 4)
	s.m.refuse(errors.New("roster line 2: \x1b[2J\x1b]0;owned\x07Ada\u202e\nstands on line 1"))
	s.shows("roster line 2: Ada stands on line 1").hides("\x1b", "\u202e", "owned")
}

// What the line says holds after another action was tried and refused: ctrl+r saves, esc gives up, at
// once and not at the second stroke.
func TestTheKeysForTroubleWorkBehindANotice(t *testing.T) {
	s, disk := troubled(t)
	s.press("117", "enter", "11 9", "enter").shows("the last action is not saved yet", "esc gives it up")
	disk.full = false
	s.press("ctrl+r").shows("Saved: court 1").hides("not saved")
	if s.final(1) != "11-7" {
		t.Errorf("after trying again the score is %q, want 11-7", s.final(1))
	}
	s, disk = troubled(t)
	s.press("117", "enter", "u").shows("not saved yet").press("esc").shows("given up").hides("not saved yet", "ctrl+r")
	disk.full = false
	if s.press("esc", "11 9", "enter").shows("Saved: court 1"); s.final(1) != "11-9" {
		t.Errorf("the score is %q, want 11-9", s.final(1))
	}
	s, _ = troubled(t)
	s.m.options.Backup = func(string, session.Command) error { return nil } // at the door letters are text, and the keys of the line are no letters
	s.press("d", "Zoe Zander", "enter").shows("not saved", "ctrl+t, then w").press("ctrl+t").shows("end the night")
	s.press("esc", "esc").shows("given up")
}

// Who quits while something is not saved is asked once, and told what it is.
func TestQuittingWithAnUnsavedActionAsksOnce(t *testing.T) {
	for _, key := range []string{"q", "ctrl+c"} {
		s, disk := troubled(t)
		s.m.options.Backup = func(string, session.Command) error { return nil }
		s.press("117", "enter", key).shows("Not saved: court 1: ", "11-7", "write a backup of the file elsewhere", "lost")
		if s.quit {
			t.Fatalf("%s quits without a question", key)
		}
		s.press("c").shows("ctrl+r tries again")
		s.press(key, "s").shows("Not saved: court 1")
		disk.full = false
		if s.press("s"); !s.quit || s.m.Left() != nil || s.final(1) != "11-7" {
			t.Fatalf("%s, s: quit %v, left %+v, score %q", key, s.quit, s.m.Left(), s.final(1))
		}
	}
}

// Who leaves all the same is told the truth afterwards.
func TestWhatIsLeftUnsavedIsKnownAfterwards(t *testing.T) {
	for _, answer := range []string{"x", "ctrl+c"} {
		s, _ := troubled(t)
		s.press("117", "enter", "q", answer)
		left := s.m.Left()
		if !s.quit || left == nil || !left.GivenUp || left.Command == nil || left.Copied != "" || !strings.Contains(left.Action, "court 1: ") {
			t.Fatalf("%s: quit %v, left %+v", answer, s.quit, left)
		}
	}
	s, _ := troubled(t)
	s.m.options.Backup = func(string, session.Command) error { return nil }
	s.press("117", "enter", "q", "w", "/stick/c.qdb", "enter").shows("! not saved: ", "all of it is in the copy /stick/c.qdb")
	s.press("q").shows("quit: it is in the copy /stick/c.qdb").press("x")
	if left := s.m.Left(); !s.quit || left == nil || left.Copied != "/stick/c.qdb" {
		t.Errorf("quit %v, left %+v", s.quit, left)
	}
	s = called(t, 2, 8)
	if s.press("117", "enter", "q"); !s.quit || s.m.Left() != nil {
		t.Errorf("with everything saved: quit %v, left %+v", s.quit, s.m.Left())
	}
}

// errRemoved is what the store says of a club file that was removed.
type errRemoved struct{}

func (errRemoved) Error() string        { return "/home/organiser/club.qdb: the club file was removed" }
func (errRemoved) Is(target error) bool { return target == session.ErrDisplaced }
func (errRemoved) Gone() bool           { return true }

// place stands for the club file and where it is.
type place struct {
	err   error // why it is not in its place
	put   int   // how often it was put back
	stuck bool  // it cannot be put back
}

// lostPlace is a stage whose club file is removed: the log takes nothing until it is put back.
func lostPlace(t *testing.T) (*stage, *place, *fullDisk) {
	t.Helper()
	s, disk := troubled(t)
	p := &place{err: errRemoved{}}
	disk.why = p.err
	s.m.options.Backup = func(string, session.Command) error { return nil }
	s.m.options.InPlace = func() error { return p.err }
	s.m.options.PutBack = func() (string, error) {
		if p.stuck {
			return "", errors.New("the disk is full")
		}
		p.put++
		p.err, disk.full = nil, false
		return "/home/organiser/club-before.qdb", nil
	}
	return s, p, disk
}

// A club file that is not in its place is told by the next look and by the next action, and put back by
// one key, which saves the action too.
func TestALostClubFileIsToldAndPutBack(t *testing.T) {
	s, p, _ := lostPlace(t)
	s.send(tickMsg{}).hides("was removed")
	s.send(placeMsg{p.err}).shows("! /home/organiser/club.qdb: the club file was removed", "ctrl+b writes the whole club file back")
	s.press("117", "enter").shows("! not saved: ", "ctrl+b writes the club file back and saves the last action").hides("Saved: court", "11 ✓")
	s.press("11 9", "enter").shows("not saved yet: ctrl+b writes the club file back")
	p.stuck = true
	s.press("ctrl+b").shows("! the disk is full").press("ctrl+r").shows("was removed")
	p.stuck = false
	s.press("ctrl+b").shows("Saved: court 1").hides("was removed", "ctrl+b")
	if p.put != 1 || s.final(1) != "11-7" {
		t.Errorf("put back %d times, the score is %q", p.put, s.final(1))
	}
	s, p, _ = lostPlace(t)
	s.send(placeMsg{p.err}).press("ctrl+b").shows("Saved: the club file is put back whole; what stood there is club-before.qdb")
	s, p, _ = lostPlace(t)
	s.send(placeMsg{p.err}).shows("was removed").send(placeMsg{nil}).hides("was removed") // somebody moved it back
	s.press("117", "enter", "esc").shows("given up").press("esc").shows("was removed", "ctrl+b writes the whole")
	s.press("ctrl+b").hides("was removed")
}

// The desk does not end before it has looked for the club file, and then offers to put it back.
func TestQuittingLooksForTheClubFile(t *testing.T) {
	s, p, _ := lostPlace(t)
	s.press("q").shows("The club file is not in its place", "write it back to its place, then quit", "the whole club file is lost, all nights of it")
	s.shows("Next: choose with the arrows").hides("ctrl+r").press("esc", "o").shows("esc closes this box; then ctrl+b").press("esc", "q")
	if s.quit {
		t.Fatal("it quits without a question")
	}
	if s.press("s"); !s.quit || p.put != 1 || s.m.Left() != nil {
		t.Fatalf("quit %v, put back %d times, left %+v", s.quit, p.put, s.m.Left())
	}
	s, p, _ = lostPlace(t)
	s.press("117", "enter", "q").shows("Not saved: court 1", "write the club file back to its place and save it").press("s")
	if !s.quit || p.put != 1 || s.final(1) != "11-7" || s.m.Left() != nil {
		t.Fatalf("quit %v, put back %d times, score %q, left %+v", s.quit, p.put, s.final(1), s.m.Left())
	}
	s, p, _ = lostPlace(t)
	p.stuck = true
	s.press("q", "s").shows("! the disk is full")
	if s.quit {
		t.Fatal("it quits though the file could not be put back")
	}
	if s.press("q", "x"); !s.quit || s.m.Left() == nil || s.m.Left().Command != nil {
		t.Errorf("quit %v, left %+v", s.quit, s.m.Left())
	}
	s, _, _ = lostPlace(t)
	s.slow = true
	s.press("q", "x").release() // the x came before the question
	if s.shows("The club file is not in its place"); s.quit {
		t.Error("what was typed before the question answers it")
	}
	s, p, _ = lostPlace(t)
	p.err = nil
	if s.press("q"); !s.quit {
		t.Error("with the file in its place it does not quit")
	}
}

// errCut is what the store says of a club file that another program cut short.
type errCut struct{}

func (errCut) Error() string {
	return "/home/organiser/club.qdb is damaged: page 4: the file is cut short; see all with \"quadrille check\""
}
func (errCut) Is(target error) bool { return target == session.ErrDamaged }

// Of a damaged club file the desk does not say that nothing else is lost, nor offer a copy that has it all.
func TestADamagedClubFileGivesNoAssurance(t *testing.T) {
	s, disk := troubled(t)
	disk.why = errCut{}
	s.m.options.Backup = func(string, session.Command) error { return disk.why }
	s.press("117", "enter").shows("! not saved: /home/organiser/club.qdb is damaged: page 4", "how the newest backup comes back")
	s.hides("othing else is lost", "writes a copy elsewhere")
	s.press("q").shows("Not saved: court 1", "write a backup of the file elsewhere", "(the file is damaged)", "be told which backup there is").hides("it is lost")
	if s.press("x"); !s.quit || s.m.Left() == nil {
		t.Errorf("quit %v, left %+v", s.quit, s.m.Left())
	}
	s, _ = troubled(t)
	s.send(placeMsg{errCut{}}).shows("! /home/organiser/club.qdb is damaged").hides("Nothing is lost").press("q").shows("The club file is damaged")
}
