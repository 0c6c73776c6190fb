package session

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/scheduler"
)

// hall opens a rolling night and checks people in, every second one of the other group.
func hall(t *testing.T, courts, people int, change func(*Settings)) (*Desk, *testClock) {
	t.Helper()
	d, _, clock := newTestDesk(t)
	s := DefaultSettings(7)
	s.Flow = Rolling
	if change != nil {
		change(&s)
	}
	must(t, d, OpenNight{Settings: s, Courts: courts})
	for i := range people {
		must(t, d, AddGuest{Name: fmt.Sprintf("Person %02d", i+1), Group: []string{"x", "y"}[i%2]})
	}
	return d, clock
}

func mixed(s *Settings) { s.Format = scheduler.Mixed }

func (d *Desk) idle() Idle {
	why, _ := d.Ledger().Idle(d.Now())
	return why
}

func running(d *Desk) int { return len(d.Ledger().Night().Running()) }

func change(t *testing.T, d *Desk, id PersonID, how func(*Person)) ChangePerson {
	t.Helper()
	p, ok := d.Ledger().Club().Person(id)
	if !ok {
		t.Fatalf("nobody is %s", id)
	}
	p = p.clone()
	how(&p)
	return ChangePerson{p}
}

// Somebody without a group, or of a third, keeps nobody from playing, and is named.
func TestWhoHasNoGroupStopsNoCourt(t *testing.T) {
	for _, group := range []string{"", "z"} {
		d, _ := hall(t, 2, 8, mixed)
		must(t, d, AddGuest{Name: "Groupless", Group: group}, BeginPlay{})
		if running(d) != 2 {
			t.Errorf("group %q: %d courts play, want 2", group, running(d))
		}
		a := d.Ledger().NextStep(d.Now())
		if len(a.Barred) != 1 || !slices.Equal(a.Barred[0].People, []PersonID{"p010"}) {
			t.Errorf("group %q: %+v are said not to be called, want the guest", group, a.Barred)
		}
	}
}

// The same for a couple who shall never meet: these two are not called, and nobody else waits for them.
func TestAContradictionStopsOnlyItsPeople(t *testing.T) {
	d, _ := hall(t, 2, 10, nil)
	must(t, d, change(t, d, "p002", func(p *Person) { p.Together = []Together{{With: "p003"}}; p.KeepApart = []PersonID{"p003"} }))
	must(t, d, BeginPlay{})
	if running(d) != 2 {
		t.Fatalf("%d courts play, want 2", running(d))
	}
	a := d.Ledger().NextStep(d.Now())
	if len(a.Barred) != 1 || a.Barred[0].Cause != Contradiction || len(a.Barred[0].People) != 2 || a.Barred[0].Text == "" {
		t.Errorf("%+v are said not to be called, want the two", a.Barred)
	}
	must(t, d, Leave{"p003"})
	if a := d.Ledger().NextStep(d.Now()); len(a.Barred) != 0 {
		t.Errorf("one of the two has left, and %+v are still not called", a.Barred)
	}
}

// Where nobody can be called, that is said before play begins, and nothing is saved.
func TestPlayDoesNotBeginWithoutACourt(t *testing.T) {
	d, _, _ := newTestDesk(t)
	s := DefaultSettings(7)
	s.Flow, s.Format = Rolling, scheduler.Mixed
	must(t, d, OpenNight{Settings: s, Courts: 2})
	for i := range 8 {
		must(t, d, AddGuest{Name: fmt.Sprintf("Person %02d", i+1)})
	}
	refused(t, d, BeginPlay{}, "have no group")
	if a := d.Ledger().NextStep(d.Now()); a.Step != StepBlocked || a.Idle.Cause != NoGroup || len(a.Idle.People) != 8 {
		t.Errorf("next is %+v, want the groups of eight people", a)
	}
}

// Whatever puts right what kept the courts empty, they are called by that very action.
func TestFreeCourtsAreCalledAfterEveryAction(t *testing.T) {
	noGroups := func(t *testing.T) *Desk { // a night that became mixed when nobody had a group
		d, _ := hall(t, 2, 8, nil)
		for _, a := range d.Ledger().Night().Roll {
			must(t, d, change(t, d, a.Person, func(p *Person) { p.Group = "" }))
		}
		must(t, d, BeginPlay{}, HoldPlay{"heat"})
		for _, g := range d.Ledger().Night().Running() {
			must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 3)})
		}
		s := d.Ledger().Night().Settings
		s.Format = scheduler.Mixed
		must(t, d, ChangeSettings{s}, ResumePlay{})
		return d
	}
	for name, c := range map[string]struct {
		hall  func(*testing.T) *Desk
		cause Cause
		mend  func(*testing.T, *Desk)
		plays int
	}{
		"a group is given": {noGroups, NoGroup, func(t *testing.T, d *Desk) {
			for i, a := range d.Ledger().Night().Roll[:4] {
				must(t, d, change(t, d, a.Person, func(p *Person) { p.Group = []string{"x", "y"}[i%2] }))
			}
		}, 1},
		"the format changes": {noGroups, NoGroup, func(t *testing.T, d *Desk) {
			s := d.Ledger().Night().Settings
			s.Format = scheduler.Rotating
			must(t, d, ChangeSettings{s})
		}, 2},
		"the change of the format is undone": {noGroups, NoGroup, func(t *testing.T, d *Desk) {
			actions := d.Ledger().Actions()
			for _, a := range slices.Backward(actions) {
				if _, ok := a.Events[0].(SettingsChanged); ok {
					must(t, d, UndoAction{a.ID})
					return
				}
			}
		}, 2},
		"a rest is undone": {func(t *testing.T) *Desk {
			d, _ := hall(t, 1, 4, nil)
			must(t, d, BeginPlay{}, FinishGame{Game: 1, Final: final(t, 11, 2)}, Rest{"p002"}, FinishGame{Game: 2, Final: final(t, 11, 2)})
			return d
		}, TooFew, func(t *testing.T, d *Desk) {
			for _, a := range d.Ledger().Actions() {
				if _, ok := a.Events[0].(PersonRested); ok {
					must(t, d, UndoAction{a.ID})
				}
			}
		}, 1},
		"the end of the calls is undone": {func(t *testing.T) *Desk {
			d, _ := hall(t, 1, 4, nil)
			must(t, d, BeginPlay{}, EndCalls{}, FinishGame{Game: 1, Final: final(t, 11, 2)})
			return d
		}, LastGames, func(t *testing.T, d *Desk) {
			for _, a := range d.Ledger().Actions() {
				if _, ok := a.Events[0].(CallsEnded); ok {
					must(t, d, UndoAction{a.ID})
				}
			}
		}, 1},
	} {
		t.Run(name, func(t *testing.T) {
			d := c.hall(t)
			if why := d.idle(); why.Cause != c.cause {
				t.Fatalf("courts are free because of %+v, want cause %d", why, c.cause)
			}
			c.mend(t, d)
			if running(d) != c.plays {
				t.Errorf("%d courts play after it, want %d; why: %+v", running(d), c.plays, d.idle())
			}
		})
	}
}

// A redo takes back what free courts called after the undo, and so does the undo of what these calls rest on.
func TestCallsOfAnUndoGoWithIt(t *testing.T) {
	d, clock := hall(t, 1, 4, nil)
	must(t, d, BeginPlay{}, EndCalls{})
	clock.now = clock.now.Add(12 * time.Minute)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 2)})
	before := stateOf(t, &Ledger{club: d.Ledger().club})
	undoCalls := func() {
		for _, a := range d.Ledger().Actions() {
			if _, ok := a.Events[0].(CallsEnded); ok {
				must(t, d, UndoAction{a.ID})
			}
		}
	}
	undoCalls()
	if running(d) != 1 {
		t.Fatal("the free court is not called")
	}
	if text := d.Ledger().Describe(d.Ledger().Actions()[len(d.Ledger().Actions())-1]); !strings.Contains(text, "court 1: Person") {
		t.Errorf("the undo is told as %q, without the call", text)
	}
	must(t, d, Redo{})
	if after := stateOf(t, &Ledger{club: d.Ledger().club}); after != before {
		t.Errorf("after undo and redo the night is\n%s\nand was\n%s", after, before)
	}
	undoCalls()
	must(t, d, Undo{}) // of the score, on which the new call rests
	if n := d.Ledger().Night(); len(n.Games) != 1 || !n.Games[0].Running() {
		t.Fatalf("the score is undone, and there are %d games", len(n.Games))
	}
	must(t, d, Redo{}, Redo{})
	if after := stateOf(t, &Ledger{club: d.Ledger().club}); after != before {
		t.Errorf("after two undos and redos the night is\n%s\nand was\n%s", after, before)
	}
}

// Near closing time no court calls by itself what would probably not be over; the organiser may.
func TestNoCallThatWouldOverrun(t *testing.T) {
	closing := evening.Add(time.Hour)
	d, clock := hall(t, 1, 8, func(s *Settings) { s.Closing = closing })
	must(t, d, BeginPlay{})
	clock.now = closing.Add(-5 * time.Minute)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 2)})
	why := d.idle()
	if why.Cause != TooLate || why.Chance <= 0 || why.Chance >= LikelyOver {
		t.Fatalf("five minutes before closing time the court is free because of %+v", why)
	}
	if a := d.Ledger().NextStep(d.Now()); a.Step != StepBlocked || a.Idle.Cause != TooLate {
		t.Errorf("next is %+v, want the chance", a)
	}
	must(t, d, CallGame{"1"})
	if running(d) != 1 {
		t.Error("the organiser cannot call it")
	}
	// a game that the clock stops is over when it does
	s := d.Ledger().Night().Settings
	s.Scoring.Minutes = 4
	must(t, d, ChangeSettings{s}, FinishGame{Game: 2, Final: final(t, 11, 2)})
	if running(d) != 1 {
		t.Errorf("a game of four minutes is not called five minutes before closing: %+v", d.idle())
	}
}

// An undo without calls to take back is written as it always was; an older program refuses the others.
func TestUndosAreWrittenInTheOldestLayoutThatHoldsThem(t *testing.T) {
	for _, c := range []struct {
		event Event
		want  uint16
	}{
		{Undone{Action: 4}, 1},
		{Undone{Action: 4, With: []uint64{3}}, 2},
		{Redone{Action: 4}, 1},
		{Redone{Action: 4, Back: []uint64{3}}, 2},
		{Redone{Action: 4, With: []uint64{3}}, 2},
	} {
		if r, err := encode(c.event); err != nil || r.Version != c.want {
			t.Errorf("%+v is written in version %d (%v), want %d", c.event, r.Version, err, c.want)
		}
	}
}

// In rounds too only people count who are here: who has gone without a group, or is yet to come, and wishes
// of somebody who has gone, keep nobody from playing.
func TestRoundsWaitForNobodyWhoIsNotHere(t *testing.T) {
	d, _, clock := newTestDesk(t)
	s := DefaultSettings(7)
	s.Rounds = 4
	must(t, d, OpenNight{Settings: s, Courts: 2})
	for i := range 8 {
		must(t, d, AddGuest{Name: fmt.Sprintf("Person %02d", i+1), Group: []string{"x", "y"}[i%2]})
	}
	must(t, d, AddGuest{Name: "Goes without a group"}, AddGuest{Name: "Goes with a wish", Group: "x"})
	playRound(t, d, clock)
	gone := d.Ledger().Night().Roll[9].Person
	wish := change(t, d, gone, func(p *Person) {
		p.Together = []Together{{With: "p002"}}
		p.KeepApart = []PersonID{"p002"}
	})
	must(t, d, wish, Leave{gone}, Leave{d.Ledger().Night().Roll[8].Person})
	must(t, d, AddGuest{Name: "Comes later"}, Leave{"p012"}, Expect{Person: "p012", Due: clock.now.Add(20 * time.Minute)})
	must(t, d, changed(d, func(s *Settings) { s.Format = scheduler.Mixed }))
	if a := d.Ledger().NextStep(clock.now); a.Step != StepCall {
		t.Fatalf("next is %+v, want the call of the round", a)
	}
	playRound(t, d, clock)
	if n := d.Ledger().Night(); len(n.Games) != 4 {
		t.Errorf("%d games in two rounds on two courts, want 4", len(n.Games))
	}
	must(t, d, CheckIn{"p012"})
	if a := d.Ledger().NextStep(clock.now); a.Step != StepBlocked || !slices.Equal(a.Idle.People, []PersonID{"p012"}) {
		t.Errorf("somebody without a group is here, and next is %+v", a)
	}
	refused(t, d, CallRound{}, "Comes later has no group")
}

// How many wait is said in the number that they are.
func TestWaitingIsCountedInWords(t *testing.T) {
	for waiting, want := range map[int]string{0: "0 wait", 1: "1 waits", 3: "3 wait"} {
		if got := (Idle{Cause: TooFew, Waiting: waiting}).Waits(); got != want {
			t.Errorf("%d: %q, want %q", waiting, got, want)
		}
	}
}

// TestTheFirstCallBeginsThePlay: a court that the organiser calls before play has begun begins it, so that
// nothing else has to be pressed; after the last games it is one more game and no new beginning.
func TestTheFirstCallBeginsThePlay(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 9, Rolling)
	must(t, d, CallGame{Court: "1"})
	if n := d.Ledger().Night(); !n.Rolls || len(n.Running()) != 2 {
		t.Fatalf("after the first call play has begun: %v, with %d games", n.Rolls, len(n.Running()))
	}
	must(t, d, EndCalls{})
	clock.now = clock.now.Add(10 * time.Minute)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 4)}, CallGame{Court: "1"})
	if n := d.Ledger().Night(); n.Rolls || !n.LastCall {
		t.Error("one more game after the last ones begins the play anew")
	}
}
