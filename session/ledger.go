package session

import (
	"fmt"
	"iter"
	"maps"
	"slices"
	"time"
)

// Ledger is the fold of a log: the state that its records give, and enough of the newest night's
// records to take any action of that night back. A ledger never changes; extending one gives
// another, so a screen may read the one it has while the desk works on the next.
type Ledger struct {
	base   *Club     // the state before the newest night was opened
	before time.Time // the clock then
	tail   []entry
	undone map[uint64]bool // actions of the tail that are taken back
	redo   []Undone        // what a redo would bring back, the next one last
	club   *Club
	last   uint64
	clock  time.Time
	moved  time.Duration     // by how much the clock was moved since the newest night was opened
	lost   bool              // records are missing, and a rescue has marked their places
	skip   map[uint64]string // records that cannot stand without the lost ones, and why
	placed *placed           // the table that was worked out last, shared with the ledgers that l came from or led to
}

// entry is one record of the tail with its meaning.
type entry struct {
	seq    uint64
	action uint64
	at     time.Time
	event  Event
}

// NewLedger is the fold of an empty log.
func NewLedger() *Ledger {
	return &Ledger{base: &Club{}, club: &Club{}, undone: map[uint64]bool{}, skip: map[uint64]string{}, placed: &placed{}}
}

// Load folds a whole log. An undo costs nothing until the night that it belongs to is complete, so
// a log of many undos loads as fast as one of none.
func Load(records iter.Seq2[Record, error]) (*Ledger, error) { return NewLedger().follow(records) }

// follow folds the records that come next into l itself.
func (l *Ledger) follow(records iter.Seq2[Record, error]) (*Ledger, error) {
	stale := false
	settle := func() (err error) {
		if stale {
			l.club, err = l.refold(l.undone, l.tell)
			stale = false
		}
		return err
	}
	for r, err := range records {
		if err != nil {
			return nil, err
		}
		before := l.clock
		e, err := l.read(r)
		if err != nil {
			return nil, err
		}
		if _, ok := e.(NightOpened); ok {
			if err := settle(); err != nil {
				return nil, err
			}
			l.begin(before)
		}
		stale = l.note(r, e) || stale
		if !stale {
			if l.club, err = l.tell(l.club, l.tail[len(l.tail)-1]); err != nil {
				return nil, fmt.Errorf("event %d (%s): %w", r.Seq, r.Kind, err)
			}
		}
	}
	return l, settle()
}

// Extend folds the records of one action on top of l.
func (l *Ledger) Extend(records []Record) (*Ledger, error) {
	next := *l
	next.undone, next.redo = maps.Clone(l.undone), slices.Clone(l.redo)
	next.club = l.club.clone()
	for _, r := range records {
		before := next.clock
		e, err := next.read(r)
		if err != nil {
			return nil, err
		}
		if _, ok := e.(NightOpened); ok {
			next.begin(before)
		}
		if next.note(r, e) {
			next.club, err = next.refold(next.undone, apply)
		} else {
			err = e.apply(&fold{next.club, r.Action}, r.Time)
		}
		if err != nil {
			return nil, fmt.Errorf("event %d (%s): %w", r.Seq, r.Kind, err)
		}
	}
	return &next, nil
}

// begin starts the tail of a night that is being opened: what came before, at the time before, can
// be taken back no more.
func (l *Ledger) begin(before time.Time) {
	l.base, l.before, l.tail = l.club.clone(), before, nil
	l.undone, l.redo = map[uint64]bool{}, nil
}

// read decodes the record that must come next.
func (l *Ledger) read(r Record) (Event, error) {
	if r.Seq != l.last+1 {
		return nil, fmt.Errorf("event %d follows event %d: events are missing between them", r.Seq, l.last)
	}
	e, err := Decode(r)
	if err != nil {
		return nil, err
	}
	l.last = r.Seq
	l.clock = r.Time
	switch e := e.(type) {
	case RecordLost:
		l.lost = true
	case NightOpened:
		l.moved = 0
	case ClockMoved:
		l.moved += e.Moved()
	}
	return e, nil
}

// apply is the state after one more entry. An error leaves the state unusable.
func apply(club *Club, e entry) (*Club, error) {
	return club, e.event.apply(&fold{club, e.action}, e.at)
}

// tell is apply for reading a log: in a rescued one an entry that cannot stand without the lost
// records is skipped, noted, and changes nothing.
func (l *Ledger) tell(club *Club, e entry) (*Club, error) {
	if !l.lost {
		return apply(club, e)
	}
	after, err := apply(club.clone(), e)
	if err != nil {
		l.skip[e.seq] = err.Error()
		return club, nil
	}
	return after, nil
}

// note keeps a record in the tail and tells whether the tail must be folded again.
func (l *Ledger) note(r Record, e Event) bool {
	l.tail = append(l.tail, entry{r.Seq, r.Action, r.Time, e})
	switch e := e.(type) {
	case Undone:
		l.takeBack(e.Action)
		l.takeBack(e.With...)
		l.redo = append(l.redo, e)
		return true
	case Redone:
		l.bringBack(e.Action)
		l.bringBack(e.Back...)
		l.takeBack(e.With...)
		l.redo = slices.DeleteFunc(l.redo, func(u Undone) bool { return u.Action == e.Action })
		return true
	case ClockMoved:
		return false // nobody did that
	}
	if !l.companion(r.Action) {
		l.redo = nil
	}
	return false
}

// companion tells whether the newest entry belongs to an undo or a redo, as what came of it.
func (l *Ledger) companion(action uint64) bool {
	if len(l.tail) == 0 || action < l.tail[0].seq || action > l.last {
		return false
	}
	_, _, toggles := toggled(l.tail[action-l.tail[0].seq].event)
	return toggles
}

// toggled is the action that an event takes back or brings back.
func toggled(e Event) (action uint64, undo, ok bool) {
	switch e := e.(type) {
	case Undone:
		return e.Action, true, true
	case Redone:
		return e.Action, false, true
	}
	return 0, false, false
}

// idle lists the undos and redos that are themselves taken back, by a later redo or undo of the same
// action: what came of them goes with them.
func (l *Ledger) idle(undone map[uint64]bool) map[uint64]bool {
	newest, out := map[uint64]uint64{}, map[uint64]bool{}
	for _, e := range l.tail {
		if of, undo, ok := toggled(e.event); ok {
			out[newest[of]] = true
			newest[of] = e.action
			out[e.action] = undone[of] != undo
		}
	}
	return out
}

func (l *Ledger) takeBack(actions ...uint64) {
	for _, a := range actions {
		l.undone[a] = true
	}
}

func (l *Ledger) bringBack(actions ...uint64) {
	for _, a := range actions {
		delete(l.undone, a)
	}
}

// refold folds the tail again as if the undone actions had not happened. The error names the first
// action that cannot stand without them.
func (l *Ledger) refold(undone map[uint64]bool, apply func(*Club, entry) (*Club, error)) (*Club, error) {
	club, idle := l.base.clone(), l.idle(undone)
	for _, e := range l.tail {
		if _, skipped := l.skip[e.seq]; skipped || undone[e.action] || idle[e.action] {
			continue
		}
		var err error
		if club, err = apply(club, e); err != nil {
			return nil, &dependsError{e.action, err}
		}
	}
	return club, nil
}

// dependsError tells which action cannot stand, and why.
type dependsError struct {
	action uint64
	err    error
}

func (e *dependsError) Error() string { return e.err.Error() }
func (e *dependsError) Unwrap() error { return e.err }

// Club is the state of everything. It must not be changed.
func (l *Ledger) Club() *Club { return l.club }

// Night is the night that goes on, nil when none does.
func (l *Ledger) Night() *Night { return l.club.OpenNight() }

// Last is the sequence number of the newest record.
func (l *Ledger) Last() uint64 { return l.last }

// Skipped lists, for a log that a rescue had to leave gaps in, what cannot stand without the lost
// records, in the order of the log. It is empty for any other log.
func (l *Ledger) Skipped() []string {
	var out []string
	for _, seq := range slices.Sorted(maps.Keys(l.skip)) {
		out = append(out, fmt.Sprintf("event %d: %s", seq, l.skip[seq]))
	}
	return out
}

// Lossy tells whether records of this log are lost.
func (l *Ledger) Lossy() bool { return l.lost }

// Clock is what the clock said when the newest record was made, zero for an empty ledger.
func (l *Ledger) Clock() time.Time { return l.clock }

// Action is one thing that somebody did: the events that it became.
type Action struct {
	ID     uint64
	Time   time.Time
	Events []Event
	Undone bool // taken back since
}

// IsUndo tells whether the action itself takes another back or brings it back.
func (a Action) IsUndo() bool {
	switch a.Events[0].(type) {
	case Undone, Redone:
		return true
	}
	return false
}

// IsClock tells whether the action is what the laptop's clock did, and not what somebody did.
func (a Action) IsClock() bool {
	_, is := a.Events[0].(ClockMoved)
	return is
}

// IsSent tells whether the action is nothing but a score that a court sent: it is taken or refused, and not undone.
func (a Action) IsSent() bool {
	_, is := a.Events[0].(ScoreProposed)
	return is && len(a.Events) == 1
}

// IsDone tells whether somebody did the action to the night, so that it can be undone.
func (a Action) IsDone() bool { return !a.IsClock() && !a.IsSent() && !a.IsUndo() }

// Actions lists what was done since the newest night was opened, oldest first.
func (l *Ledger) Actions() []Action {
	var out []Action
	for begin := 0; begin < len(l.tail); {
		end := begin + 1
		for end < len(l.tail) && l.tail[end].action == l.tail[begin].action {
			end++
		}
		out = append(out, l.actionOf(l.tail[begin:end]))
		begin = end
	}
	return out
}

// actionOf is the action of all of its entries.
func (l *Ledger) actionOf(entries []entry) Action {
	a := Action{ID: entries[0].action, Time: entries[0].at, Undone: l.undone[entries[0].action], Events: make([]Event, len(entries))}
	for i, e := range entries {
		a.Events[i] = e.event
	}
	return a
}

// NewestCalls tells whether the newest action called people to courts one by one.
func (l *Ledger) NewestCalls() bool {
	if len(l.tail) == 0 {
		return false
	}
	_, called := l.tail[len(l.tail)-1].event.(GameCalled)
	return called
}

// Action finds an action of the newest night.
func (l *Ledger) Action(id uint64) (Action, bool) {
	for _, a := range l.Actions() {
		if a.ID == id {
			return a, true
		}
	}
	return Action{}, false
}
