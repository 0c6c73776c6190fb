package session

import (
	"slices"
	"strings"
	"testing"

	"club/quadrille/scheduler"
)

// TestWhoPlaysOnlyOnSomeCourtsDoesSo in all flows and formats, and gets as many games as anybody.
func TestWhoPlaysOnlyOnSomeCourtsDoesSo(t *testing.T) {
	for _, c := range []struct {
		flow   Flow
		format scheduler.Format
	}{{Rounds, scheduler.Rotating}, {Rolling, scheduler.Rotating}, {Rounds, scheduler.Pairs}, {Rolling, scheduler.Pairs}} {
		d, log, clock := newTestDesk(t)
		s := DefaultSettings(7)
		s.Flow, s.Format = c.flow, c.format
		must(t, d, OpenNight{Settings: s, Named: []CourtID{"1", "2", "Centre"}})
		for _, name := range []string{"Ann", "Bob", "Cat", "Dan", "Eve", "Flo", "Gus", "Hal", "Ida", "Joe", "Kit", "Lou", "Mia", "Ned", "Oda", "Pip"} {
			must(t, d, AddGuest{Name: name})
		}
		own := map[PersonID][]CourtID{named(t, d, "Ann"): {"Centre"}, named(t, d, "Joe"): {"1", "2"}}
		for id, courts := range own {
			p, _ := d.Ledger().Club().Person(id)
			p.Courts = slices.Clone(courts)
			p.Courts[0] = CourtID(" " + strings.ToLower(string(courts[0])))
			must(t, d, ChangePerson{p})
			refused(t, d, ChangePerson{p}, "nothing is different")
		}
		playCalls(t, d, clock, 8)
		checkReplay(t, d, log)
		n := d.Ledger().Night()
		for id, courts := range own {
			for _, g := range n.Games {
				if g.Has(id) && !slices.Contains(courts, g.Court) {
					t.Errorf("%s, %s: %s plays on court %s", c.flow, c.format.Words(), d.Ledger().Club().Name(id), g.Court)
				}
			}
			if k := n.GamesOf(id); k < 4 {
				t.Errorf("%s, %s: %s has %d games of %d", c.flow, c.format.Words(), d.Ledger().Club().Name(id), k, len(n.Games))
			}
		}
	}
}

// TestOwnCourtsThatThereAreNot: a court that is closed keeps the person out, one that the night does not have binds
// nobody, and both are told.
func TestOwnCourtsThatThereAreNot(t *testing.T) {
	for _, c := range []struct {
		own     CourtID
		closed  bool
		played  bool
		warns   string
		sitsOut bool
	}{
		{"2", false, false, "", false},
		{"2", true, false, "Person 01 can play on none of the open courts", true},
		{"2", true, true, "Person 01 can play on none of the open courts", true},
		{"Centre", false, true, "Person 01 plays only on court Centre, which is no court tonight: any court will do", false},
	} {
		d, _, clock := newTestDesk(t)
		withPeople(t, d, 3, 12, Rounds)
		p := d.Ledger().Club().People[0].clone()
		p.Courts = []CourtID{c.own}
		must(t, d, ChangePerson{p})
		if c.played {
			must(t, d, CallRound{})
			score(t, d, clock, 3)
		}
		if c.closed {
			must(t, d, CloseCourt{"2"})
		}
		r, err := PlanRotation(t.Context(), d.Ledger(), clock.now)
		if err != nil {
			t.Fatal(err)
		}
		plays := 0
		for _, round := range r.Rounds {
			for _, g := range round.Games {
				if g.A.Has(p.ID) || g.B.Has(p.ID) {
					plays++
				}
			}
		}
		if warned := strings.Join(r.Warnings, "; "); (plays == 0) != c.sitsOut || !strings.Contains(warned, c.warns) || c.warns == "" && warned != "" {
			t.Errorf("%+v: plays %d rounds, and the rotation warns %q", c, plays, warned)
		}
	}
}

// TestNobodyElseWaitsForACourtOfTheirOwn: where the first free court has no four since somebody plays elsewhere only,
// the next is called.
func TestNobodyElseWaitsForACourtOfTheirOwn(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 2, 4, Rolling)
	p := d.Ledger().Club().People[3].clone()
	p.Courts = []CourtID{"2"}
	must(t, d, ChangePerson{p}, BeginPlay{})
	if run := d.Ledger().Night().Running(); len(run) != 1 || run[0].Court != "2" {
		t.Errorf("called %+v", run)
	}
}
