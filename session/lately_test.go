package session

import (
	"testing"

	"club/quadrille/scheduler"
)

// TestNightsBeforeAreRemembered: with whom somebody played counts half as much each night, six nights long, on this night
// and not on the nights themselves; people who are not here do not count, and a night that forgets has none.
func TestNightsBeforeAreRemembered(t *testing.T) {
	d, _, clock := newTestDesk(t)
	names := []string{"Ann", "Bob", "Cat", "Dan", "Eve"}
	for night := range 8 {
		s := DefaultSettings(7)
		must(t, d, OpenNight{Settings: s, Courts: 1})
		for _, name := range names {
			if p, ok := d.Ledger().Club().Named(name); ok {
				must(t, d, CheckIn{p.ID})
			} else {
				must(t, d, AddGuest{Name: name})
			}
		}
		roll := d.Ledger().Night().Roll
		team := func(a, b int) Team { return Team{roll[a].Person, roll[b].Person} }
		plan := []PlannedRound{{Games: []PlannedGame{{"1", team(0, 1), team(2, 3)}}, Out: []PersonID{roll[4].Person}}}
		must(t, d, CallRound{Plan: plan})
		must(t, d, FinishGame{GameID(1), final(t, 11, night)})
		must(t, d, EndNight{})
	}
	must(t, d, OpenNight{Settings: DefaultSettings(7), Courts: 1})
	for _, name := range names[:4] {
		p, _ := d.Ledger().Club().Named(name)
		must(t, d, CheckIn{p.ID})
	}
	want := 1000 + 500 + 250 + 125 + 62 + 31
	lately := func() []scheduler.Recent {
		return newDraw(d.Ledger().Club(), d.Ledger().Night(), clock.now).problem.Lately
	}
	got := lately()
	if len(got) != 6 {
		t.Fatalf("remembered is %+v", got)
	}
	for _, r := range got {
		partners := r.A == 0 && r.B == 1 || r.A == 2 && r.B == 3
		if partners && (r.Partners != want || r.Opponents != 0) || !partners && (r.Partners != 0 || r.Opponents != want) {
			t.Errorf("remembered is %+v, want %d", r, want)
		}
	}
	club := d.Ledger().Club()
	if c := Certify(club, club.Nights[0], clock.now); c.Remembered != 0 {
		t.Errorf("the first night remembers %d", c.Remembered)
	}
	if c := Certify(club, club.Nights[1], clock.now); c.Remembered != 2 || c.LastPartners.Value != 2 || !c.LastPartners.Open {
		t.Errorf("the second night has %+v of %d", c.LastPartners, c.Remembered)
	}
	r := rotationOf(t, d, clock.now)
	if g := r.Rounds[0].Games[0]; g.A.Has(club.People[0].ID) == g.A.Has(club.People[1].ID) {
		t.Errorf("Ann and Bob are partners again: %+v", g)
	}
	s := d.Ledger().Night().Settings
	s.Forget = true
	must(t, d, ChangeSettings{s})
	if got := lately(); got != nil {
		t.Errorf("a night that forgets remembers %+v", got)
	}
}
