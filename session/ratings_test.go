package session

import (
	"testing"
	"time"

	"club/quadrille/scoring/rating"
)

func TestRatingsFollowTheGames(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	strong := d.Ledger().Night().Roll[0].Person
	for range 6 {
		must(t, d, CallRound{})
		clock.now = clock.now.Add(12 * time.Minute)
		g := d.Ledger().Night().Running()[0]
		f := final(t, 11, 4)
		if g.B.Has(strong) {
			f = final(t, 4, 11)
		}
		must(t, d, FinishGame{Game: g.ID, Final: f})
	}
	table, err := Ratings(d.Ledger().Club(), rating.Default())
	if err != nil {
		t.Fatal(err)
	}
	if len(table) != 4 || table[0].Who != strong || !table[0].Comparable || table[0].Games != 6 {
		t.Errorf("the one who won all six games is not first: %+v", table)
	}
	must(t, d, Undo{})
	again, err := Ratings(d.Ledger().Club(), rating.Default())
	if err != nil || again[0].Games != 5 {
		t.Errorf("an undone score still counts: %+v, %v", again[0], err)
	}
}

// A night that a wrong clock puts before the one before it is rated all the same, and no time passes between.
func TestRatingsOutliveAClockThatWasPutBack(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	play := func() {
		must(t, d, CallRound{})
		clock.now = clock.now.Add(12 * time.Minute)
		must(t, d, FinishGame{Game: d.Ledger().Night().Running()[0].ID, Final: final(t, 11, 4)})
	}
	play()
	must(t, d, EndNight{})
	clock.now = clock.now.AddDate(-1, 0, 0)
	must(t, d, OpenNight{Name: "after it", Settings: DefaultSettings(7), Courts: 1})
	for _, p := range d.Ledger().Club().People {
		must(t, d, CheckIn{Person: p.ID})
	}
	play()
	m := rating.Club()
	m.Growth = rating.SettledGrowth
	table, err := Ratings(d.Ledger().Club(), m)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range table {
		if p.Sigma >= m.Sigma {
			t.Errorf("after two games %s is as unsure as before any", p.Who)
		}
	}
}
