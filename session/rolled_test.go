package session

import (
	"testing"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// rollFor plays a rolling night of 18 people on 4 courts: so many games, the oldest ending first.
func rollFor(t *testing.T, d *Desk, clock *testClock, games int) {
	t.Helper()
	withPeople(t, d, 4, 18, Rolling)
	must(t, d, BeginPlay{})
	for range games {
		clock.now = clock.now.Add(4 * time.Minute)
		must(t, d, FinishGame{Game: d.Ledger().Night().Running()[0].ID, Final: final(t, 11, 6)})
	}
	must(t, d, EndCalls{})
	for _, g := range d.Ledger().Night().Running() {
		clock.now = clock.now.Add(4 * time.Minute)
		must(t, d, FinishGame{Game: g.ID, Final: final(t, 11, 6)})
	}
}

// TestRoundsKnowWhatWasRolled: a night that goes over from rolling to rounds repeats no partners of its
// first hour, and the certificate of the plan and of the night tell the same.
func TestRoundsKnowWhatWasRolled(t *testing.T) {
	d, log, clock := newTestDesk(t)
	rollFor(t, d, clock, 10)
	rolling := Certify(d.Ledger().Club(), d.Ledger().Night(), clock.now)
	s := d.Ledger().Night().Settings
	s.Flow, s.Rounds = Rounds, 4
	must(t, d, ChangeSettings{s})

	plan, err := PlanRotation(t.Context(), d.Ledger(), clock.now)
	if err != nil {
		t.Fatal(err)
	}
	if got := plan.Certificate.PartnerRepeats.Value; got > rolling.PartnerRepeats.Value {
		t.Errorf("%d partner repeats were %d before the rounds", got, rolling.PartnerRepeats.Value)
	}
	for range s.Rounds {
		playRound(t, d, clock)
	}
	whole := Certify(d.Ledger().Club(), d.Ledger().Night(), clock.now)
	if whole != plan.Certificate {
		t.Errorf("planned as %+v\nplayed as %+v", plan.Certificate, whole)
	}
	if got := partnerRepeats(d.Ledger().Night()); got != whole.PartnerRepeats.Value {
		t.Errorf("the certificate has %d partner repeats, the games %d", whole.PartnerRepeats.Value, got)
	}
	checkReplay(t, d, log)
}

// partnerRepeats counts how often two people were partners again.
func partnerRepeats(n *Night) (repeats int) {
	partners := map[Team]bool{}
	for i := range n.Games {
		for _, s := range []Team{n.Games[i].A, n.Games[i].B} {
			pair := Team{min(s[0], s[1]), max(s[0], s[1])}
			if partners[pair] {
				repeats++
			}
			partners[pair] = true
		}
	}
	return repeats
}

// TestThePlanAfterRollingCountsWhoHasGone: they have no part in the rounds, and their games stay games of
// the night.
func TestThePlanAfterRollingCountsWhoHasGone(t *testing.T) {
	d, _, clock := newTestDesk(t)
	rollFor(t, d, clock, 12)
	var gone []PersonID
	for i := range 4 {
		gone = append(gone, d.Ledger().Night().Roll[i].Person)
		must(t, d, Leave{gone[i]})
	}
	s := d.Ledger().Night().Settings
	s.Flow, s.Rounds = Rounds, 3
	must(t, d, ChangeSettings{s})
	before := d.Ledger().DrawKey()
	for range s.Rounds {
		plan, err := PlanRotation(t.Context(), d.Ledger(), clock.now)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range plan.Rounds {
			for _, id := range gone {
				for _, g := range r.Games {
					if (&Game{A: g.A, B: g.B}).Has(id) {
						t.Errorf("%s has gone and is to play", id)
					}
				}
			}
		}
		playRound(t, d, clock)
		if now := Certify(d.Ledger().Club(), d.Ledger().Night(), clock.now); len(plan.Rounds) == 1 && now != plan.Certificate {
			t.Errorf("planned as %+v\nplayed as %+v", plan.Certificate, now)
		}
	}
	if d.Ledger().DrawKey() == before {
		t.Error("three rounds do not change what the rotation depends on")
	}
}

// TestARolledGameThatWasSetAsideIsNone: of four people who all partnered each other but for one game set
// aside, the next round takes that one.
func TestARolledGameThatWasSetAsideIsNone(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rolling)
	must(t, d, BeginPlay{})
	void, err := DefaultSettings(1).Scoring.Final(0, 0, scoring.Void)
	if err != nil {
		t.Fatal(err)
	}
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 2)}, FinishGame{Game: 2, Final: final(t, 11, 2)}, EndCalls{}, FinishGame{Game: 3, Final: void})
	s := d.Ledger().Night().Settings
	s.Flow, s.Rounds = Rounds, 1
	must(t, d, ChangeSettings{s}, CallRound{})
	clock.now = clock.now.Add(12 * time.Minute)
	must(t, d, FinishGame{Game: 4, Final: final(t, 11, 2)})
	if c := Certify(d.Ledger().Club(), d.Ledger().Night(), clock.now); c.PartnerRepeats != (scheduler.Value{}) {
		t.Errorf("three games, three ways to make two teams, partner repeats %+v", c.PartnerRepeats)
	}
}

// TestWhoIsPutInCountsForTheRounds: while a rolled game goes on, somebody is put in, and has met others than
// the one who left. The rotation that depends on it must be made anew.
func TestWhoIsPutInCountsForTheRounds(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 6, Rolling)
	must(t, d, BeginPlay{}, EndCalls{})
	n := d.Ledger().Night()
	s := n.Settings
	s.Flow, s.Rounds = Rounds, 3
	must(t, d, ChangeSettings{s})
	g := n.Running()[0]
	var free PersonID
	for _, a := range n.Roll {
		if !g.Has(a.Person) {
			free = a.Person
		}
	}
	before := d.Ledger().DrawKey()
	must(t, d, Substitute{Game: g.ID, Out: g.A[0], In: free})
	if d.Ledger().DrawKey() == before {
		t.Error("the rotation is said to depend on nothing that has changed")
	}
}
