package session

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scoring"
	"club/quadrille/scoring/rating"
)

// longNight is a desk whose clock can be set while time passes.
type longNight struct {
	*Desk
	t      testing.TB
	log    *MemoryLog
	clock  *testClock
	passed time.Duration
	byWait bool // free courts call by waiting time
}

func newLongNight(t testing.TB) *longNight {
	d, log, clock := newTestDesk(t)
	h := &longNight{Desk: d, t: t, log: log, clock: clock}
	h.CountBy(func() time.Duration { return h.passed })
	return h
}

// pass lets time pass, and set sets the clock.
func (h *longNight) pass(d time.Duration) { h.passed += d; h.clock.now = h.clock.now.Add(d) }
func (h *longNight) set(by time.Duration) { h.clock.now = h.clock.now.Add(by) }

// reopen closes the desk and opens it again on what is kept.
func (h *longNight) reopen() {
	h.t.Helper()
	d, err := NewDesk(h.log, h.clock.Now, h.newID)
	if err != nil {
		h.t.Fatal(err)
	}
	h.Desk = d
	h.CountBy(func() time.Duration { return h.passed })
}

// play plays a night of 18 people on 3 courts to its closing time, two hours after the start, and tells
// who was called when, and the longest wait, by the time that really passed. The clock is set before the
// calls that jumps has.
func (h *longNight) play(flow Flow, jumps map[int]time.Duration) (calls []string, longest time.Duration) {
	h.t.Helper()
	withPeople(h.t, h.Desk, 3, 18, flow)
	s := h.Ledger().Night().Settings
	s.Closing, s.ByWait = h.clock.now.Add(2*time.Hour), h.byWait
	must(h.t, h.Desk, ChangeSettings{s})
	free := map[PersonID]time.Duration{}
	called := 0
	for step, set := 0, -1; ; step++ {
		if set < step {
			h.set(jumps[step])
			set = step
		}
		n := h.Ledger().Night()
		switch a := h.Ledger().NextStep(h.clock.now); {
		case h.ClockMoved():
			must(h.t, h.Desk, NoteClock{})
			step--
			continue
		case a.Step == StepBegin:
			must(h.t, h.Desk, BeginPlay{})
		case a.Step == StepCall:
			must(h.t, h.Desk, CallRound{})
		case len(n.Running()) > 0:
			h.pass(time.Duration(150+37*(step%5)) * time.Second)
			g := slices.MinFunc(n.Running(), func(a, b *Game) int { return int(a.ID - b.ID) })
			if shown := h.clock.now.Sub(g.Called); shown <= 0 || shown > 30*time.Minute {
				h.t.Errorf("step %d: a game goes on for %v by the clock", step, shown)
			}
			for _, id := range g.Players() {
				free[id] = h.passed
			}
			must(h.t, h.Desk, FinishGame{Game: g.ID, Final: final(h.t, 11, step%9)})
		default:
			return calls, longest
		}
		n = h.Ledger().Night()
		for ; called < len(n.Games); called++ {
			g := &n.Games[called]
			calls = append(calls, fmt.Sprint(g.ID, g.Court, g.A, g.B, h.passed))
			for _, id := range g.Players() {
				longest = max(longest, h.passed-free[id])
			}
		}
	}
}

// However the clock is set in a night, the same people are called at the same times, to the last call
// before closing, and nobody waits longer; in the rolling flow by waiting time. To mix more, a second that nobody
// notes may decide between two choices that are as good.
func TestAClockThatIsSetChangesNothingOfTheNight(t *testing.T) {
	jumps := map[string]map[int]time.Duration{
		"back 3 h":          {17: -3 * time.Hour},
		"ahead 3 h":         {9: 3 * time.Hour},
		"ahead a day":       {12: 24 * time.Hour},
		"ahead a year":      {12: 365 * 24 * time.Hour},
		"back and mended":   {8: -3 * time.Hour, 25: 3 * time.Hour},
		"back by a minute":  {5: -time.Minute, 10: -time.Minute, 11: -time.Minute, 20: -time.Minute},
		"steps of a second": {5: -time.Second, 6: -time.Second, 7: time.Second, 8: -time.Second, 9: -time.Second, 10: -time.Second},
	}
	for _, flow := range []Flow{Rounds, Rolling} {
		plain := newLongNight(t)
		plain.byWait = true
		calls, longest := plain.play(flow, nil)
		for name := range jumps {
			t.Run(fmt.Sprint(flow, " ", name), func(t *testing.T) {
				h := newLongNight(t)
				h.byWait = true
				got, wait := h.play(flow, jumps[name])
				for i := range max(len(got), len(calls)) {
					if i >= len(got) || i >= len(calls) || got[i] != calls[i] {
						t.Fatalf("call %d differs: %d calls and %d without the jump\n got %v\nwant %v",
							i+1, len(got), len(calls), got[min(i, len(got)):], calls[min(i, len(calls)):])
					}
				}
				if wait != longest {
					t.Errorf("the longest wait is %v, without the jump %v", wait, longest)
				}
				checkReplay(t, h.Desk, h.log)
			})
		}
	}
}

// The desk can be closed and opened again at any time of a night. If the clock was set meanwhile, it is
// told, and what is counted goes on from where it was.
func TestTheClockIsSetWhileTheDeskIsClosed(t *testing.T) {
	for name, c := range map[string]struct {
		gap, set time.Duration
		words    string        // of the history, "" for nothing
		counted  time.Duration // of the gap
		closing  bool          // has passed
	}{
		"a minute":            {time.Minute, 0, "", time.Minute, false},
		"a flat battery":      {40 * time.Minute, 0, "", 40 * time.Minute, false},
		"put back 3 h":        {time.Minute, -3 * time.Hour, "put back 2 h 59 min", 0, false},
		"put back a day":      {time.Minute, -24 * time.Hour, "put back 23 h 59 min", 0, false},
		"put back a year":     {time.Hour, -365 * 24 * time.Hour, "put back 364 days", 0, false},
		"forgotten to end it": {7 * 24 * time.Hour, 0, "the desk was closed for 7 days", 0, true},
	} {
		t.Run(name, func(t *testing.T) {
			h := newLongNight(t)
			withPeople(t, h.Desk, 1, 7, Rolling)
			s := h.Ledger().Night().Settings
			s.Closing, s.ByWait = h.clock.now.Add(2*time.Hour), h.byWait
			must(t, h.Desk, ChangeSettings{s}, BeginPlay{})
			h.pass(10 * time.Minute)
			must(t, h.Desk, AddGuest{Name: "The last one"})
			h.pass(c.gap)
			h.set(c.set)
			h.reopen()
			if h.ClockMoved() != (c.words != "") {
				t.Fatalf("the clock was moved: %v", h.ClockMoved())
			}
			must(t, h.Desk, NoteClock{})
			h.pass(5 * time.Minute)
			n := h.Ledger().Night()
			if got, want := n.Bench()[0].Waited(h.Now()), 15*time.Minute+c.counted; got != want {
				t.Errorf("the first on the bench waits for %v, want %v", got, want)
			}
			if got := n.pastClosing(h.Now()); got != c.closing {
				t.Errorf("closing time has passed: %v", got)
			}
			actions := h.Ledger().Actions()
			newest := h.Ledger().Describe(actions[len(actions)-1])
			if c.words != "" && !strings.Contains(newest, c.words) {
				t.Errorf("the history says %q, want %q", newest, c.words)
			}
			if h.ClockMoved() {
				t.Error("it is told twice")
			}
			checkReplay(t, h.Desk, h.log)
		})
	}
}

// Holds, medical time-outs and announcements go on over a clock that is set: what play stood still is no
// time of a game, and who is announced comes in as many minutes as before.
func TestWhatStandsStillGoesOnOverAJump(t *testing.T) {
	for _, by := range []time.Duration{-3 * time.Hour, 24 * time.Hour} {
		h := newLongNight(t)
		withPeople(t, h.Desk, 2, 9, Rolling)
		must(t, h.Desk, BeginPlay{}, Leave{"p010"}, Expect{Person: "p010", Due: h.clock.now.Add(40 * time.Minute), Leaves: h.clock.now.Add(2 * time.Hour)})
		h.pass(5 * time.Minute)
		must(t, h.Desk, NoteGame{1, scoring.Entry{Kind: scoring.MedicalTimeOut}})
		h.pass(4 * time.Minute)
		h.set(by)
		h.pass(2 * time.Minute)
		must(t, h.Desk, NoteGame{1, scoring.Entry{Kind: scoring.RallyWon}})
		h.pass(time.Minute)
		must(t, h.Desk, HoldPlay{"heat"})
		h.pass(10 * time.Minute)
		h.set(-by)
		h.pass(10 * time.Minute)
		must(t, h.Desk, ResumePlay{})
		h.pass(time.Minute)
		n := h.Ledger().Night()
		if got, want := n.GameTime(n.Game(1), h.Now()), 7*time.Minute; got != want {
			t.Errorf("game 1 was played for %v, want %v: 33 minutes less 6 of the time-out and 20 of the hold", got, want)
		}
		if got, want := n.GameTime(n.Game(2), h.Now()), 13*time.Minute; got != want {
			t.Errorf("game 2 was played for %v, want %v", got, want)
		}
		a := n.Attending("p010")
		if due, leaves := a.Due.Sub(h.Now()), a.Leaves.Sub(h.Now()); due != 7*time.Minute || leaves != 87*time.Minute {
			t.Errorf("who comes in 7 minutes and leaves in 87 does so in %v and %v", due, leaves)
		}
		checkReplay(t, h.Desk, h.log)
	}
}

// A laptop that sleeps lets time pass; a clock without a better measure is believed for ten hours.
func TestASleepingLaptopLetsTimePass(t *testing.T) {
	h := newLongNight(t)
	withPeople(t, h.Desk, 1, 7, Rolling)
	h.pass(5 * time.Hour)
	if h.ClockMoved() {
		t.Error("time has passed, and the clock shows it")
	}
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 7, Rolling)
	clock.now = clock.now.Add(9 * time.Hour)
	if d.ClockMoved() {
		t.Error("nine hours may have passed")
	}
	clock.now = clock.now.Add(11 * time.Hour)
	if !d.ClockMoved() {
		t.Error("nobody plays for eleven hours without an action")
	}
}

// What the clock did is no action of anybody's: undo and redo pass it over.
func TestTheClockCannotBeUndone(t *testing.T) {
	h := newLongNight(t)
	withPeople(t, h.Desk, 1, 5, Rolling)
	must(t, h.Desk, Undo{})
	h.set(-3 * time.Hour)
	must(t, h.Desk, NoteClock{})
	moved := h.Ledger().Last()
	refused(t, h.Desk, UndoAction{moved}, "cannot be undone")
	must(t, h.Desk, Redo{}) // of the guest, from before the clock was set
	if n := h.Ledger().Night().Count(Here); n != 5 {
		t.Errorf("%d are here after the redo, want 5", n)
	}
	must(t, h.Desk, Undo{})
	h.set(-time.Hour)
	must(t, h.Desk, Undo{}) // it notes the clock and undoes the guest before
	if n := h.Ledger().Night().Count(Here); n != 3 {
		t.Errorf("%d are here after two undos, want 3", n)
	}
	h.pass(time.Minute)
	if got := h.Ledger().Night().Bench()[0].Waited(h.Now()); got != time.Minute {
		t.Errorf("the first waits for %v after all that, want a minute", got)
	}
	checkReplay(t, h.Desk, h.log)
}

// A disk that keeps what it refused to keep does not make the clock move twice.
func TestTheClockIsMovedOnceWhateverTheDiskSays(t *testing.T) {
	h := newLongNight(t)
	withPeople(t, h.Desk, 1, 5, Rolling)
	bad := &faultyLog{MemoryLog: h.log, fail: true, keep: true}
	h.Desk.log = bad
	h.set(-3 * time.Hour)
	if _, err := h.Do(NoteClock{}); err == nil {
		t.Fatal("the disk takes nothing")
	}
	bad.fail = false
	_, _ = h.Do(NoteClock{})
	h.pass(time.Minute)
	if h.ClockMoved() {
		t.Error("the log knows already that the clock was put back")
	}
	if got := h.Ledger().Night().Bench()[0].Waited(h.Now()); got != time.Minute {
		t.Errorf("the first waits for %v, want a minute", got)
	}
}

// Another laptop's night comes with what its clock did.
func TestANightIsMergedWithWhatItsClockDid(t *testing.T) {
	h := newLongNight(t)
	h.play(Rolling, map[int]time.Duration{17: -3 * time.Hour})
	for _, g := range h.Ledger().Night().Running() {
		must(t, h.Desk, FinishGame{Game: g.ID, Final: final(t, 11, 5)})
	}
	must(t, h.Desk, EndNight{})
	d, log, _ := laptop(t, "other")
	withPeople(t, d, 1, 4, Rolling)
	must(t, d, EndNight{})
	var theirs []Record
	for r := range h.log.Records(1) {
		theirs = append(theirs, r)
	}
	l, _, err := d.Join(theirs, TwoAlike)
	if err != nil {
		t.Fatal(err)
	}
	want, got := h.Ledger().Club().Night(), l.Club().Night()
	for i := range want.Games {
		w, g := &want.Games[i], &got.Games[i]
		if took := g.Finished.Sub(g.Called); took != w.Finished.Sub(w.Called) || took <= 0 || took > 30*time.Minute {
			t.Errorf("game %d took %v there and %v here", w.ID, w.Finished.Sub(w.Called), took)
		}
	}
	checkReplay(t, d, log)
}

// drawClock lets some seconds pass, and now and then sets the clock.
func drawClock(t *rapid.T, clock *testClock) {
	clock.now = clock.now.Add(time.Duration(rapid.IntRange(-5, 90).Draw(t, "seconds")) * time.Second)
	if rapid.IntRange(0, 9).Draw(t, "set") == 0 {
		clock.now = clock.now.Add(time.Duration(rapid.SampledFrom([]int{-72, -3, -1, 1, 3, 24, 8760}).Draw(t, "hours")) * time.Hour)
	}
}

// A league whose nights are not in the order of their dates is rated all the same: a clock was ahead,
// or the nights of two laptops were joined.
func TestRatingsFollowTheNightsAndNotTheirDates(t *testing.T) {
	d, _, clock := newTestDesk(t)
	for _, days := range []int{400, 0, 7} {
		clock.now = evening.AddDate(0, 0, days)
		if len(d.Ledger().Club().Nights) == 0 {
			withPeople(t, d, 1, 4, Rounds)
		} else {
			must(t, d, OpenNight{Settings: DefaultSettings(1), Courts: 1}, CheckIn{"p002"}, CheckIn{"p003"}, CheckIn{"p004"}, CheckIn{"p005"})
		}
		playRound(t, d, clock)
		must(t, d, EndNight{})
	}
	if table, err := Ratings(d.Ledger().Club(), rating.Default()); err != nil || len(table) != 4 {
		t.Errorf("%d people are rated: %v", len(table), err)
	}
}

// TestAHoldNeverTakesTimeAway: a clock that goes back by less than is taken for a move, while play is held,
// lets no game have stood for less than nothing.
func TestAHoldNeverTakesTimeAway(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, CallRound{})
	clock.now = clock.now.Add(5 * time.Minute)
	must(t, d, HoldPlay{Why: "wet court"})
	clock.now = clock.now.Add(-clockSlack / 2)
	must(t, d, ResumePlay{})
	if g := d.Ledger().Night().Game(1); g.Stood != 0 {
		t.Errorf("the game stood for %v", g.Stood)
	}
}
