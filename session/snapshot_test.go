package session

import (
	"bytes"
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// snapshotLog is a log in memory that keeps a snapshot.
type snapshotLog struct {
	*MemoryLog
	kept Snapshot
}

func (l *snapshotLog) Snapshot() (Snapshot, bool)    { return l.kept, l.kept.Seq > 0 }
func (l *snapshotLog) KeepSnapshot(s Snapshot) error { l.kept = s; return nil }

// sameLedger fails unless two ledgers are the same in all that a desk can ask of them.
func sameLedger(t testing.TB, got, want *Ledger) {
	t.Helper()
	if g, w := stateOf(t, got), stateOf(t, want); g != w {
		t.Fatalf("the ledgers differ\n got %s\nwant %s", g, w)
	}
	if !got.Clock().Equal(want.Clock()) || !got.before.Equal(want.before) {
		t.Fatalf("the clocks are %v and %v, want %v and %v", got.Clock(), got.before, want.Clock(), want.before)
	}
	if !reflect.DeepEqual(got.Actions(), want.Actions()) {
		t.Fatal("the actions differ")
	}
	for i, n := range want.Club().Nights {
		for j := range n.Games {
			if g, w := got.Club().Nights[i].Games[j].State, n.Games[j].State; g != w {
				t.Fatalf("game %d of night %d stands at %+v, want %+v", j+1, n.ID, g, w)
			}
		}
	}
}

// Whatever happens in some nights, a log opens from its snapshot as from its first record, and the
// check of the snapshot agrees.
func TestASnapshotGivesTheSameLedger(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d, memory, clock := newTestDesk(t)
		for night := range rapid.IntRange(2, 3).Draw(rt, "nights") {
			s := DefaultSettings(3)
			s.Rounds = 3
			must(t, d, OpenNight{Settings: s, Courts: 2})
			for i := range rapid.IntRange(4, 9).Draw(rt, "people") {
				must(t, d, AddGuest{Name: fmt.Sprintf("Guest %d of %d", i, night)})
			}
			for range rapid.IntRange(0, 25).Draw(rt, "steps") {
				drawClock(rt, clock)
				_, _ = d.Do(drawCommand(rt, d.Ledger())) // refusals are as good as anything
			}
			endNight(t, d)
		}
		must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1})
		whole, err := Load(memory.Records(1))
		if err != nil {
			rt.Fatal(err)
		}
		s, err := whole.writeBase()
		if err != nil {
			rt.Fatal(err)
		}
		log := &snapshotLog{memory, s}
		quick, ok := openQuickly(log)
		if !ok {
			rt.Fatal("the snapshot was not used")
		}
		sameLedger(t, quick, whole)
		if err := CheckSnapshot(log, s); err != nil {
			rt.Fatal(err)
		}
		if again, err := quick.writeBase(); err != nil || !bytes.Equal(again.State, s.State) {
			rt.Fatalf("the snapshot of a ledger that came from one differs: %v", err)
		}
	})
}

// endNight ends a night, in whatever state it is.
func endNight(t testing.TB, d *Desk) {
	t.Helper()
	n := d.Ledger().Night()
	if n == nil {
		return
	}
	if n.Hold != nil {
		must(t, d, ResumePlay{})
	}
	calm := n.Settings
	calm.Flow = Rounds
	must(t, d, ChangeSettings{calm})
	for _, g := range d.Ledger().Night().Running() {
		must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 5)})
	}
	must(t, d, EndNight{})
}

// A snapshot that is no good costs nothing but the time that it would have saved.
func TestASnapshotIsNeverTrustedOverTheLog(t *testing.T) {
	d, memory, clock := newTestDesk(t)
	withPeople(t, d, 1, 5, Rounds)
	playRound(t, d, clock)
	must(t, d, EndNight{}, OpenNight{Settings: DefaultSettings(2), Courts: 1}, CheckIn{"p002"})
	good, err := d.Ledger().writeBase()
	if err != nil {
		t.Fatal(err)
	}
	change := func(old, text string) Snapshot {
		state := bytes.Replace(good.State, []byte(old), []byte(text), 1)
		if bytes.Equal(state, good.State) {
			t.Fatalf("the snapshot has no %s", old)
		}
		return Snapshot{good.Seq, state}
	}
	for name, c := range map[string]struct {
		snapshot Snapshot
		used     bool // it looks sound, so that only a check finds it out
	}{
		"no JSON":           {Snapshot{good.Seq, []byte("?")}, false},
		"nothing":           {Snapshot{good.Seq, []byte("null")}, false},
		"another layout":    {change(fmt.Sprintf(`"layout":%d`, snapshotLayout), fmt.Sprintf(`"layout":%d`, snapshotLayout+1)), false},
		"an open night":     {change(`"closed":"`, `"close":"`), false},
		"a number too high": {Snapshot{good.Seq + 1, good.State}, false},
		"a number too low":  {Snapshot{good.Seq - 1, good.State}, false},
		"nobody":            {change(`"people":[`, `"persons":[`), false},
		"another name":      {change("Person 01", "Person 99"), true},
	} {
		t.Run(name, func(t *testing.T) {
			log := &snapshotLog{memory, c.snapshot}
			if err := CheckSnapshot(log, c.snapshot); err == nil {
				t.Error("the check finds nothing wrong")
			}
			l, err := Open(log)
			if err != nil {
				t.Fatal(err)
			}
			if !c.used {
				sameLedger(t, l, d.Ledger())
			}
		})
	}
	if err := CheckSnapshot(&snapshotLog{memory, good}, good); err != nil {
		t.Error(err)
	}
}

// What a rescue has left gaps in is always folded whole, and small logs need no snapshot.
func TestSnapshotsAreKeptOnlyWhereTheyServe(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 1, 5, Rounds)
	must(t, d, EndNight{}, OpenNight{Settings: DefaultSettings(2), Courts: 1})
	if _, ok, err := d.Ledger().Snapshot(); ok || err != nil {
		t.Errorf("a log of %d records gets a snapshot (%v)", log.Last(), err)
	}
	if _, ok, err := NewLedger().Snapshot(); ok || err != nil {
		t.Errorf("an empty log gets a snapshot (%v)", err)
	}
	long, err := Load(longLog(t, 3*snapshotWorth).Records(1))
	if err != nil {
		t.Fatal(err)
	}
	if s, ok, err := long.Snapshot(); !ok || err != nil || s.Seq != long.tail[0].seq-1 {
		t.Errorf("a log of %d records: %d, %v, %v", long.last, s.Seq, ok, err)
	}
	long.lost = true
	if _, ok, err := long.Snapshot(); ok || err != nil {
		t.Errorf("a log with gaps gets a snapshot (%v)", err)
	}
}
