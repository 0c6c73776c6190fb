package session

import (
	"slices"
	"testing"
	"time"
)

// Whatever the clock says, who came to the bench first stands first on it.
func TestTheBenchIsInTheOrderOfWhatHappened(t *testing.T) {
	jumps := []time.Duration{-3 * time.Hour, 24 * time.Hour, -time.Second, -366 * 24 * time.Hour, 5 * time.Minute}
	for _, flow := range []Flow{Rounds, Rolling} {
		t.Run(string(flow), func(t *testing.T) {
			d, log, clock := newTestDesk(t)
			withPeople(t, d, 2, 14, flow)
			start := Command(BeginPlay{})
			if flow == Rounds {
				start = CallRound{}
			}
			must(t, d, start)
			for _, jump := range jumps {
				bench := benched(d)
				g := d.Ledger().Night().Running()[0]
				clock.now = clock.now.Add(jump)
				must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 4)})
				now := benched(d)
				bench = slices.DeleteFunc(bench, func(id PersonID) bool { return !slices.Contains(now, id) })
				if !slices.Equal(now[:len(bench)], bench) {
					t.Errorf("after a jump of %v the bench is %v, and %v stood there before", jump, now, bench)
				}
				if flow == Rounds && len(d.Ledger().Night().Running()) == 0 {
					must(t, d, CallRound{})
				}
			}
			checkReplay(t, d, log)
		})
	}
}

// benched lists the bench.
func benched(d *Desk) []PersonID {
	var out []PersonID
	for _, a := range d.Ledger().Night().Bench() {
		out = append(out, a.Person)
	}
	return out
}

// A record keeps what the clock said, and a clock that was ahead on an earlier night does not make
// the next one take place in the future.
func TestRecordsKeepWhatTheClockSaid(t *testing.T) {
	d, log, clock := newTestDesk(t)
	clock.now = evening.AddDate(1, 0, 1)
	withPeople(t, d, 1, 5, Rolling)
	must(t, d, EndNight{})
	clock.now = evening
	s := DefaultSettings(3)
	s.Flow, s.Closing = Rolling, evening.Add(2*time.Hour)
	must(t, d, OpenNight{Settings: s, Courts: 1})
	for _, id := range []PersonID{"p002", "p003", "p004", "p005"} {
		must(t, d, CheckIn{id})
	}
	must(t, d, BeginPlay{})
	n := d.Ledger().Night()
	if !n.Opened.Equal(evening) {
		t.Errorf("the night was opened at %v, and the clock said %v", n.Opened, evening)
	}
	if len(n.Games) != 1 {
		t.Error("nothing is called, as if closing time had passed")
	}
	for r := range log.Records(log.Last()) {
		if !r.Time.Equal(evening) {
			t.Errorf("record %d says %v, the clock said %v", r.Seq, r.Time, evening)
		}
	}
}
