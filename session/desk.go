package session

import (
	"fmt"
	"sync"
	"sync/atomic"
	"time"
)

// Desk takes commands, one at a time and in order, and keeps what they lead to. All its methods
// may be called from any goroutine.
type Desk struct {
	log   Log
	clock watch
	newID func() PersonID
	pick  Picker

	writing sync.Mutex // held from the decision on a command until it is durable
	unsure  bool       // an append failed: the log may hold more than the ledger; guarded by writing
	ledger  atomic.Pointer[Ledger]
}

// NewDesk folds the log and stands ready for commands. Now is the laptop's clock, which may be wrong and
// may be set at any time; how much time passes the desk takes from the monotonic reading of its times, or
// from CountBy.
func NewDesk(log Log, now func() time.Time, newID func() PersonID) (*Desk, error) {
	d := &Desk{log: log, newID: newID}
	d.clock.now = now
	if err := d.reload(); err != nil {
		return d, err
	}
	d.clock.count(nil, d.Ledger())
	return d, nil
}

// PickBy has free courts filled by another choice than the scheduler's. It must be called before the
// first command.
func (d *Desk) PickBy(p Picker) { d.pick = p }

// CountBy gives the desk a better measure of how much time passes: the time since some moment, which
// nobody sets, and which goes on while the laptop sleeps.
func (d *Desk) CountBy(steady func() time.Duration) { d.clock.count(steady, d.Ledger()) }

// Ledger is the state as it is on disk now.
func (d *Desk) Ledger() *Ledger { return d.ledger.Load() }

// Now is what the laptop's clock says.
func (d *Desk) Now() time.Time {
	now, _, _ := d.clock.read(d.Ledger())
	return now
}

// ClockMoved tells whether the clock was moved since the newest record of the night that is open. The
// next command writes it down, whatever it is; [NoteClock] is one that does nothing else.
func (d *Desk) ClockMoved() bool {
	_, _, moved := d.clock.read(d.Ledger())
	return moved
}

// KeepError tells that something could not be made durable. What was wanted has not happened, and
// the desk keeps the state from before.
type KeepError struct {
	Err    error
	Action string // what was to be done, in words; "" if it is not known
}

func (e *KeepError) Error() string { return fmt.Sprintf("not saved: %v", e.Err) }
func (e *KeepError) Unwrap() error { return e.Err }

// Do decides on a command, makes its events durable and gives the state after it. After a refusal
// or a failure it gives the state as it still is, and the error.
//
// After a failure that the disk took back, so that the action is durable all the same, the next
// command is refused with [ErrSavedAfterAll]: it may be the same once more.
func (d *Desk) Do(c Command) (*Ledger, error) {
	return d.DoAll(func(one func(Command) (*Ledger, error)) error {
		_, err := one(c)
		return err
	})
}

// decide is what a command leads to, and the records of it. If the clock was moved, that comes before
// all else, so that the command is decided with times that are right.
func (d *Desk) decide(l *Ledger, c Command) (*Ledger, []Record, error) {
	now, moved, ok := d.clock.read(l)
	env := Env{Now: stamp(now), Zone: now.Location(), NewID: d.newID, Pick: d.pick}
	var before []Record
	if ok {
		var err error
		if before, err = record(l, env.Now, []Event{moved}); err != nil {
			return nil, nil, err
		}
		if l, err = l.Extend(before); err != nil {
			return nil, nil, err
		}
	}
	events, err := c.decide(l, env)
	if err != nil {
		return l, before, err
	}
	records, next, err := l.act(events, env)
	return next, append(before, records...), err
}

// Wait returns when no command is being worked on.
func (d *Desk) Wait() {
	d.writing.Lock()
	defer d.writing.Unlock()
}

// reload folds the log again. It must not run beside Do.
func (d *Desk) reload() error {
	l, err := Open(d.log)
	if err != nil {
		return err
	}
	d.ledger.Store(l)
	d.unsure = false
	return nil
}

// stamp is a time as records keep it: what the clock says, right or wrong, since the order of records
// is their numbers and nothing else.
func stamp(now time.Time) time.Time { return now.UTC().Truncate(time.Millisecond) }

// act folds what a command was decided to be, and then the calls of the courts that can be called after it,
// whatever the command was: this is the only place where courts call by themselves. The calls belong to
// the action.
func (l *Ledger) act(events []Event, env Env) ([]Record, *Ledger, error) {
	records, err := record(l, env.Now, events)
	if err != nil {
		return nil, nil, err
	}
	next, err := l.Extend(records)
	if err != nil {
		return nil, nil, err
	}
	calls, err := next.callFree(env)
	if err != nil || len(calls) == 0 {
		return records, next, err
	}
	more, err := record(next, env.Now, calls)
	if err != nil {
		return nil, nil, err
	}
	for i := range more {
		more[i].Action = l.Last() + 1
	}
	next, err = next.Extend(more)
	return append(records, more...), next, err
}

// record writes the events of one action as records that follow l.
func record(l *Ledger, at time.Time, events []Event) ([]Record, error) {
	first := l.Last() + 1
	night := NightID(0)
	if n := l.Club().Night(); n != nil {
		night = n.ID
	}
	out := make([]Record, 0, len(events))
	for i, e := range events {
		r, err := encode(e)
		if err != nil {
			return nil, err
		}
		if o, ok := e.(NightOpened); ok {
			night = o.Night
		}
		r.Seq, r.Action, r.Time, r.Night = first+uint64(i), first, at, night
		out = append(out, r)
	}
	return out, nil
}

// Join takes the records of another log that are not here yet. See [Merge].
func (d *Desk) Join(theirs []Record, same SameName) (*Ledger, Merged, error) {
	d.writing.Lock()
	defer d.writing.Unlock()
	if d.unsure {
		if err := d.reload(); err != nil {
			return d.Ledger(), Merged{}, &KeepError{Err: err}
		}
	}
	l := d.Ledger()
	records, result, err := Merge(l, theirs, same)
	if err != nil || len(records) == 0 {
		return l, result, err
	}
	next, err := l.joined(records)
	if err != nil {
		return l, Merged{}, fmt.Errorf("the other file does not fit: %w", err)
	}
	if err := d.log.Append(records); err != nil {
		d.unsure = true
		return l, Merged{}, &KeepError{Err: err}
	}
	d.ledger.Store(next)
	return next, result, nil
}

// joined folds the records of whole nights on top of l. An empty ledger may take those of a rescued
// log, in which some cannot stand.
func (l *Ledger) joined(records []Record) (*Ledger, error) {
	if l.last == 0 {
		return Load(inOrder(records))
	}
	return l.Extend(records)
}
