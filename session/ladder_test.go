package session

import (
	"testing"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// On a ladder the winners of a court meet the losers of the court above, and partners part.
func TestLadderMovesWinnersUp(t *testing.T) {
	d, log, clock := newTestDesk(t)
	s := DefaultSettings(11)
	s.Format = scheduler.Ladder
	must(t, d, OpenNight{Settings: s, Courts: 2})
	for i := range 8 {
		must(t, d, AddGuest{Name: string(rune('A' + i)), Level: 2 + float64(i)/2})
	}
	must(t, d, CallRound{})
	top := d.Ledger().Night().GameOn("1")
	for _, id := range top.Players() {
		if p, _ := d.Ledger().Club().Person(id); p.Level < 4 {
			t.Errorf("%s with level %g begins on the top court", p.Name, p.Level)
		}
	}
	clock.now = clock.now.Add(12 * time.Minute)
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 5)})
	refused(t, d, CallRound{}, "enter the score of court 2")
	must(t, d, FinishGame{Game: 2, Final: final(t, 5, 11)}, CallRound{})
	n := d.Ledger().Night()
	next := n.GameOn("1")
	for _, id := range append(members(n.Games[0].A), members(n.Games[1].B)...) {
		if !next.Has(id) {
			t.Errorf("%s won and is not on the top court", d.Ledger().Club().Name(id))
		}
	}
	if w := n.Games[0].A; next.A.Has(w[0]) && next.A.Has(w[1]) || next.B.Has(w[0]) && next.B.Has(w[1]) {
		t.Error("partners stay together")
	}
	if n.Games[0].Final.How() != scoring.Played {
		t.Fatal("the first round was played")
	}
	checkReplay(t, d, log)
}
