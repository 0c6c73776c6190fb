package session

import (
	"encoding/json"
	"fmt"
	"time"
)

// Snapshot is what a log comes to up to the opening of its newest night, so that a log of many
// nights opens without folding all of them. It is only ever a shortcut: it is made from the records,
// everything in it can be worked out from them again, and where it and they differ they are right.
type Snapshot struct {
	Seq   uint64 // the newest record that it holds
	State []byte // the state after that record, in the form that Snapshot of a ledger writes
}

// Snapshots is what a log offers that keeps snapshots beside its records.
type Snapshots interface {
	// Snapshot gives the snapshot that was kept last, if its bytes are what was written and the
	// record that it ends with is still the one that it was made from; ok is false otherwise.
	Snapshot() (s Snapshot, ok bool)

	// KeepSnapshot makes s durable in place of the one before. The error wraps ErrOutOfStep if the
	// log has no record s.Seq.
	KeepSnapshot(s Snapshot) error
}

// snapshotLayout is the version of the form in which a state is written. It changes whenever the
// fold or the state does, so that a snapshot of another program is not used but made anew.
const snapshotLayout = 18

// snapshotWorth is the fewest records that a snapshot is worth keeping for: folding as many takes
// about 3 ms.
const snapshotWorth = 1000

// snapshotState is a state in writing. No game goes on in it and nothing is taken back.
type snapshotState struct {
	Layout int       `json:"layout"`
	Clock  time.Time `json:"clock"`
	Club   *Club     `json:"club"`
}

// Snapshot writes down the state before the newest night was opened: what came before can be taken
// back no more. It is ok only where it saves more than it costs, and never for a log that has lost
// records, whose ledger knows more than a state.
func (l *Ledger) Snapshot() (s Snapshot, ok bool, err error) {
	if len(l.tail) == 0 || l.tail[0].seq <= snapshotWorth || l.lost {
		return Snapshot{}, false, nil
	}
	s, err = l.writeBase()
	return s, err == nil, err
}

// writeBase writes down the state before the newest night.
func (l *Ledger) writeBase() (Snapshot, error) {
	state, err := json.Marshal(snapshotState{snapshotLayout, l.before, l.base})
	if err != nil {
		return Snapshot{}, fmt.Errorf("writing a snapshot: %w", err)
	}
	return Snapshot{Seq: l.tail[0].seq - 1, State: state}, nil
}

// restore reads a state that Snapshot wrote.
func (s Snapshot) restore() (*Ledger, error) {
	var state snapshotState
	if err := json.Unmarshal(s.State, &state); err != nil {
		return nil, fmt.Errorf("reading the snapshot: %w", err)
	}
	switch {
	case state.Layout != snapshotLayout:
		return nil, fmt.Errorf("the snapshot is of another layout (%d, this program writes %d)", state.Layout, snapshotLayout)
	case state.Club == nil || state.Club.OpenNight() != nil:
		return nil, fmt.Errorf("the snapshot holds no state between two nights")
	}
	for _, n := range state.Club.Nights {
		for i := range n.Games {
			g := &n.Games[i]
			var err error
			if g.State, err = g.Sheet().State(); err != nil {
				return nil, fmt.Errorf("the snapshot's game %d of night %d: %w", g.ID, n.ID, err)
			}
		}
	}
	state.Club.index()
	l := NewLedger()
	l.base, l.club = state.Club, state.Club.clone()
	l.last, l.clock, l.before = s.Seq, state.Clock, state.Clock
	return l, nil
}

// Open folds a log, from its snapshot on where it keeps one that can be used, else from the first
// record. Either way gives the same ledger.
func Open(log Log) (*Ledger, error) {
	if l, ok := openQuickly(log); ok {
		return l, nil
	}
	return Load(log.Records(1))
}

// openQuickly folds what follows a snapshot. Whatever is wrong with it, the whole log decides.
func openQuickly(log Log) (*Ledger, bool) {
	kept, ok := log.(Snapshots)
	if !ok {
		return nil, false
	}
	s, ok := kept.Snapshot()
	if !ok {
		return nil, false
	}
	l, err := s.restore()
	if err != nil {
		return nil, false
	}
	l, err = l.follow(log.Records(s.Seq + 1))
	if err != nil || l.lost {
		return nil, false
	}
	return l, true
}

// CheckSnapshot folds all records up to the end of s and tells whether they come to the state that
// s holds, and to a night that goes on from it.
func CheckSnapshot(log Log, s Snapshot) error {
	quick, err := s.restore()
	if err != nil {
		return err
	}
	l := NewLedger()
	whole, err := l.follow(func(yield func(Record, error) bool) {
		for r, err := range log.Records(1) {
			if r.Seq > s.Seq || !yield(r, err) {
				return
			}
		}
	})
	if err != nil {
		return err
	}
	for _, l := range []*Ledger{quick, whole} {
		if l.last != s.Seq {
			return fmt.Errorf("the snapshot holds %d events, the log %d", s.Seq, l.last)
		}
	}
	return sameState(quick, whole)
}

// sameState tells whether two ledgers have come to the same.
func sameState(quick, whole *Ledger) error {
	var texts [2]string
	for i, l := range []*Ledger{quick, whole} {
		text, err := json.Marshal(snapshotState{snapshotLayout, l.clock, l.club})
		if err != nil {
			return err
		}
		texts[i] = string(text)
	}
	if texts[0] != texts[1] {
		return fmt.Errorf("the snapshot up to event %d is not what the events come to", whole.last)
	}
	return nil
}
