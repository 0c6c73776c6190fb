package session

import (
	"errors"
	"fmt"
	"reflect"
	"testing"
	"time"

	"club/quadrille/scoring"
)

// diskLog is a log whose disk fails at one write, and goes on failing until there is room again. The
// write may have happened all the same.
type diskLog struct {
	*MemoryLog
	at    int // the write that fails first, from 1
	lands bool
	full  bool
	write int
}

func (d *diskLog) Append(recs []Record) error {
	if d.write++; d.write == d.at {
		d.full = true
		if d.lands {
			if err := d.MemoryLog.Append(recs); err != nil {
				return err
			}
		}
	}
	if d.full {
		return errors.New("no space left on device")
	}
	return d.MemoryLog.Append(recs)
}

// script is a night of at least 200 actions, each one write: two games rally by rally, with holds,
// undos and people who come and go in between.
func script(l *Ledger, i int) Command {
	n := l.Night()
	switch {
	case i == 0:
		s := DefaultSettings(5)
		s.Scoring.Scoring = scoring.RallyScoring
		s.Scoring.To = 21
		return OpenNight{Name: "script", Settings: s, Courts: 2}
	case i < 10:
		return AddGuest{Name: fmt.Sprintf("Person %02d", i)}
	case len(n.Running()) == 0:
		return CallRound{}
	case i%31 == 0:
		return Undo{}
	case i%37 == 0:
		return HoldPlay{"heat"}
	case n.Hold != nil:
		return ResumePlay{}
	}
	g := n.Running()[i%len(n.Running())]
	return ScoreRally{Game: g.ID, Rally: scoring.Rally{Won: scoring.Team(i / 2 * 5 % 7 % 2)}}
}

// playScript plays the script on a log and does again what could not be saved, as an organiser would
// who has made room. It gives the log's records.
func playScript(t *testing.T, log *diskLog, actions int) []Record {
	t.Helper()
	now, ids := evening, 0
	d, err := NewDesk(log, func() time.Time { return now }, func() PersonID { ids++; return PersonID(fmt.Sprintf("p%03d", ids)) })
	if err != nil {
		t.Fatal(err)
	}
	for i := range actions {
		now = now.Add(10 * time.Second)
		c, ids0 := script(d.Ledger(), i), ids
		before := d.Ledger()
		acknowledged := before.Last()
		_, err := d.Do(c)
		if err == nil {
			continue
		}
		var keep *KeepError
		if !errors.As(err, &keep) {
			t.Fatalf("action %d (%T): %v", i, c, err)
		}
		if d.Ledger() != before {
			t.Fatalf("action %d was not saved, and the desk shows another state", i)
		}
		if _, err := d.Do(c); !log.lands && !errors.As(err, &keep) {
			t.Fatalf("on a disk that is still full action %d gives %v", i, err)
		}
		if log.Last() < acknowledged {
			t.Fatalf("of %d acknowledged records %d are left", acknowledged, log.Last())
		}
		log.full, ids = false, ids0
		if log.lands {
			if d.Ledger().Last() == acknowledged {
				t.Fatalf("action %d is on disk and was not found there", i)
			}
			ids += map[bool]int{true: 1}[isNew(c)]
			continue
		}
		if _, err := d.Do(c); err != nil {
			t.Fatalf("with room on the disk action %d gives %v", i, err)
		}
	}
	return log.records
}

// isNew tells whether a command makes an identity.
func isNew(c Command) bool {
	switch c.(type) {
	case OpenNight, AddGuest:
		return true
	}
	return false
}

// The disk is full at each of the first 200 writes in turn: what was acknowledged before is there,
// the desk shows nothing that is not, and after there is room the night ends as if nothing had been.
// The same where the disk has written what it says it has not.
func TestAFullDiskAtAnyOfTheFirst200WritesLosesNothing(t *testing.T) {
	const actions = 205
	whole := playScript(t, &diskLog{MemoryLog: &MemoryLog{}}, actions)
	for at := 1; at <= 200; at++ {
		for _, lands := range []bool{false, true} {
			log := &diskLog{MemoryLog: &MemoryLog{}, at: at, lands: lands}
			if got := playScript(t, log, actions); !reflect.DeepEqual(got, whole) {
				t.Fatalf("with a full disk at write %d (landing: %v) the night has %d records, want the same %d", at, lands, len(got), len(whole))
			}
			if log.write <= at {
				t.Fatalf("the night has only %d writes", log.write)
			}
		}
	}
}

// A command that comes after one that landed all the same is not done in a state that nobody saw.
func TestAfterAWriteThatLandedTheNextCommandWaits(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, CallRound{})
	d.log = &diskLog{MemoryLog: log, at: 1, lands: true}
	rally := ScoreRally{Game: 1, Rally: scoring.Rally{Won: scoring.A}}
	var keep *KeepError
	if _, err := d.Do(rally); !errors.As(err, &keep) {
		t.Fatalf("got %v", err)
	}
	l, err := d.Do(rally)
	if !errors.Is(err, ErrSavedAfterAll) || len(l.Night().Games[0].Rallies) != 1 {
		t.Fatalf("got %v and %d rallies", err, len(l.Night().Games[0].Rallies))
	}
	d.log.(*diskLog).full = false
	must(t, d, rally)
	if k := len(d.Ledger().Night().Games[0].Rallies); k != 2 {
		t.Errorf("%d rallies, want 2", k)
	}
	checkReplay(t, d, log)
}
