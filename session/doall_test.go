package session

import (
	"errors"
	"testing"
	"time"
)

// deafLog takes nothing while it is told to.
type deafLog struct {
	MemoryLog
	deaf    bool
	appends int
}

func (d *deafLog) Append(recs []Record) error {
	if d.deaf {
		return errors.New("the disk is full")
	}
	d.appends++
	return d.MemoryLog.Append(recs)
}

// TestDoAllDoesAllOrNothing: several commands become durable in one append; a refusal, or a disk that takes nothing,
// leaves the night as it was, and the desk goes on.
func TestDoAllDoesAllOrNothing(t *testing.T) {
	log := &deafLog{}
	ids := 0
	d, err := NewDesk(log, func() time.Time { return time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC) }, func() PersonID {
		ids++
		return PersonID(rune('a' + ids))
	})
	if err != nil {
		t.Fatal(err)
	}
	open := OpenNight{Name: "test night", Settings: DefaultSettings(7), Courts: 2}
	two := func(more ...Command) error {
		_, err := d.DoAll(func(one func(Command) (*Ledger, error)) error {
			for _, c := range append([]Command{open, AddGuest{Name: "Agnes Vale"}}, more...) {
				if l, err := one(c); err != nil {
					return err
				} else if l.Night() == nil {
					t.Error("the next command does not see what the one before led to")
				}
			}
			return nil
		})
		return err
	}
	if err := two(CallRound{}); !errors.Is(err, ErrTooFew) || d.Ledger().Last() != 0 || log.Last() != 0 {
		t.Errorf("a refusal gives %v and %d events", err, log.Last())
	}
	log.deaf = true
	var keep *KeepError
	if err := two(); !errors.As(err, &keep) || d.Ledger().Night() != nil {
		t.Errorf("a full disk gives %v", err)
	}
	log.deaf = false
	if err := two(); err != nil || log.appends != 1 || d.Ledger().Last() != log.Last() || len(d.Ledger().Night().Roll) != 1 {
		t.Errorf("%v: %d appends, %d events of %d", err, log.appends, d.Ledger().Last(), log.Last())
	}
	if _, err := d.Do(AddGuest{Name: "Bram Okoro"}); err != nil {
		t.Errorf("the desk does not go on: %v", err)
	}
}
