package session

import (
	"testing"

	"club/quadrille/scoring/rating"
)

// TestLevelsByRatings: they are those of the nights before, whatever tonight brings; who is new stands in the middle, or
// at the own level; and a night that does not ask for them goes by what people state.
func TestLevelsByRatings(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	strong := d.Ledger().Night().Roll[0].Person
	for range 6 {
		must(t, d, CallRound{})
		for _, g := range d.Ledger().Night().Running() {
			f := final(t, 11, 6)
			if g.B.Has(strong) {
				f = final(t, 6, 11)
			}
			must(t, d, FinishGame{g.ID, f})
		}
	}
	if got := d.Ledger().Night().levels(d.Ledger().Club()); got != nil {
		t.Errorf("without a wish for ratings the levels are %v", got)
	}
	must(t, d, EndNight{})

	s := DefaultSettings(7)
	s.Rated = true
	must(t, d, OpenNight{Settings: s, Courts: 2}, AddGuest{Name: "New"}, AddGuest{Name: "Known", Level: 4.5})
	club := d.Ledger().Club()
	levels := func() map[PersonID]float64 { return d.Ledger().Night().levels(d.Ledger().Club()) }
	table, err := Ratings(club, rating.Club())
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, p := range club.People[:8] {
		r, _ := table.Of(p.ID)
		if want := inTenths(rating.Club().Stated(r.Rating)); levels()[p.ID] != want {
			t.Errorf("%s has the level %.1f, want %.1f", p.Name, levels()[p.ID], want)
		}
		if p.ID != strong && levels()[p.ID] >= levels()[strong] {
			t.Errorf("%s has %.1f, and who won all games %.1f", p.Name, levels()[p.ID], levels()[strong])
		}
		sum += r.Mu / 8
	}
	if got, want := levels()[named(t, d, "New")], inTenths(rating.Club().Stated(rating.Rating{Mu: sum})); got != want {
		t.Errorf("who is new has %.1f, want the middle, %.1f", got, want)
	}
	if got := levels()[named(t, d, "Known")]; got != 4.5 {
		t.Errorf("who states 4.5 and is new has %.1f", got)
	}
	for _, p := range club.People[:8] {
		must(t, d, CheckIn{p.ID})
	}
	before := levels()[strong]
	must(t, d, CallRound{})
	for _, g := range d.Ledger().Night().Running() {
		must(t, d, FinishGame{g.ID, final(t, 0, 11)})
	}
	if got := levels()[strong]; got != before {
		t.Errorf("a game of tonight moved a level from %.1f to %.1f", before, got)
	}
	draw := newDraw(d.Ledger().Club(), d.Ledger().Night(), clock.now)
	for i, id := range draw.people {
		if draw.problem.People[i].Level != levels()[id] {
			t.Errorf("%s is drawn at %.1f, rated %.1f", id, draw.problem.People[i].Level, levels()[id])
		}
	}
	p, _ := d.Ledger().Club().Person(named(t, d, "Known"))
	p.Level = 2
	must(t, d, ChangePerson{p})
	if got := levels()[p.ID]; got != 2 {
		t.Errorf("after the level was changed to 2 it is %.1f", got)
	}
}

// TestLevelsStandForTheirRatings: a rating that a level starts at stands for that level.
func TestLevelsStandForTheirRatings(t *testing.T) {
	m := rating.Club()
	for _, level := range []float64{1, 2.5, 3, 4.25, 6} {
		if got := m.Stated(m.Level(level)); got < level-1e-9 || got > level+1e-9 {
			t.Errorf("level %g stands at %g", level, got)
		}
	}
	if inTenths(-3) != 0.1 || inTenths(12) != 10 || inTenths(3.449) != 3.4 {
		t.Error("levels leave their scale")
	}
}
