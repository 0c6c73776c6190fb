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
