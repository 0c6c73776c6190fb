//go:build linux

package store

import (
	"errors"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
)

func init() { roles["full"] = playOnAFullDisk }

// playOnAFullDisk plays a night of which each of the first 200 writes meets a full disk, first of all
// at its very first byte, and then somewhere else, and is then done again with room on the disk.
func playOnAFullDisk(path string) error {
	const actions = 200
	s, err := Open(path)
	if err != nil {
		return err
	}
	now, ids := time.Date(2026, 1, 8, 19, 0, 0, 0, time.UTC), 0
	desk, err := session.NewDesk(s, func() time.Time { return now }, func() session.PersonID {
		ids++
		return session.PersonID(fmt.Sprintf("p%03d", ids))
	})
	if err != nil {
		return err
	}
	for i := range actions {
		now = now.Add(5 * time.Second)
		if err := doOnAFullDisk(desk, s, rallyNight(desk.Ledger(), i), uint64(i%5)*4096); err != nil {
			return fmt.Errorf("action %d: %w", i+1, err)
		}
	}
	fmt.Println("done", s.Last())
	return s.Close()
}

// doOnAFullDisk does a command twice: first where files may not go on behind room bytes, then where
// they may.
func doOnAFullDisk(desk *session.Desk, s *Store, c session.Command, room uint64) error {
	before := desk.Ledger()
	if err := limitFileSize(room); err != nil {
		return err
	}
	_, failure := desk.Do(c)
	if err := limitFileSize(unlimited); err != nil {
		return err
	}
	var keep *session.KeepError
	if !errors.As(failure, &keep) {
		return fmt.Errorf("the full disk was told as %w", failure)
	}
	if desk.Ledger() != before {
		return errors.New("the desk shows what is not on disk")
	}
	if err := s.Reopen(); err != nil {
		return err
	}
	if s.Last() != before.Last() {
		return fmt.Errorf("event %d was acknowledged, the file has %d", before.Last(), s.Last())
	}
	_, err := desk.Do(c)
	return err
}

// rallyNight is action i of a night on two courts that are scored rally by rally.
func rallyNight(l *session.Ledger, i int) session.Command {
	n := l.Night()
	switch {
	case i == 0:
		return session.OpenNight{Settings: session.DefaultSettings(1), Courts: 2}
	case i <= 8:
		return session.AddGuest{Name: fmt.Sprintf("Person %d", i)}
	case len(n.Running()) == 0:
		return session.CallRound{}
	}
	g := n.Running()[i%len(n.Running())]
	return session.ScoreRally{Game: g.ID, Rally: scoring.Rally{Won: scoring.Team(i / 2 * 5 % 7 % 2)}}
}

// Each of the first 200 writes of a night fails for want of room. Nothing that was acknowledged is
// lost, the desk goes on when there is room, and the file is sound.
func TestADiskThatIsFullAtEachOfTheFirst200Writes(t *testing.T) {
	path := filepath.Join(t.TempDir(), "club.qdb")
	c := start(t, "full", path)
	summary := c.line(t)
	if err := c.cmd.Wait(); err != nil {
		t.Fatal(summary, err)
	}
	var last uint64
	if _, err := fmt.Sscanf(summary, "done %d", &last); err != nil || last < 200 {
		t.Fatalf("%q, %v", summary, err)
	}
	if r := mustBeSound(t, path); r.Last != last {
		t.Errorf("the file ends with record %d, want %d", r.Last, last)
	}
	s, l := openDesk(t, path)
	defer s.Close()
	if n := l.Night(); n == nil || n.Count(session.Here) != 8 || len(n.Games) < 2 {
		t.Errorf("the night is %+v", n)
	}
}
