package session

import (
	"testing"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

func TestWhatCountsForTheTable(t *testing.T) {
	for _, stopped := range []bool{false, true} {
		testWhatCounts(t, stopped)
	}
}

func testWhatCounts(t *testing.T, stopped bool) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, changed(d, func(s *Settings) { s.Stopped = stopped }))
	rules := DefaultSettings(1).Scoring
	retired, err := rules.Retire(10, 5, scoring.A)
	if err != nil {
		t.Fatal(err)
	}
	void, err := rules.Final(0, 0, scoring.Void)
	if err != nil {
		t.Fatal(err)
	}
	for i, f := range []scoring.Final{final(t, 11, 7), retired, rules.Walkover(scoring.B), void} {
		must(t, d, CallRound{}, FinishGame{Game: GameID(i + 1), Final: f})
	}
	results := d.Ledger().Night().Results(d.Ledger().Club().Name)
	if !stopped {
		if len(results) != 1 {
			t.Errorf("by the rule only the played game counts, but %+v", results)
		}
		return
	}
	if len(results) != 3 {
		t.Fatalf("%d results count, want 3", len(results))
	}
	// The leader gave up at 10-5: the others get the fewest points that win by two.
	if r := results[1]; r.ScoreA != 10 || r.ScoreB != 12 || r.Winner != 1 {
		t.Errorf("the game given up counts as %+v", r)
	}
}

func TestLotsPartWhoIsLevel(t *testing.T) {
	d, log, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	must(t, d, CallRound{})
	refused(t, d, DrawLots{}, "nobody is level")
	must(t, d, FinishGame{Game: 1, Final: final(t, 11, 2)}, DrawLots{})
	rows := Standings(d.Ledger().Club(), d.Ledger().Night())
	for i, r := range rows {
		if r.Rank != i+1 {
			t.Errorf("after the draw %s has rank %d at place %d", r.Name, r.Rank, i+1)
		}
	}
	refused(t, d, DrawLots{}, "nobody is level")
	checkReplay(t, d, log)
}

func TestSetPairsHaveOneRow(t *testing.T) {
	d, _, _ := newTestDesk(t)
	s := DefaultSettings(3)
	s.Format = scheduler.Pairs
	must(t, d, OpenNight{Settings: s, Courts: 1})
	for _, name := range []string{"Ada", "Ben", "Cy", "Di"} {
		must(t, d, AddGuest{Name: name})
	}
	must(t, d, CallRound{}, FinishGame{Game: 1, Final: final(t, 11, 2)})
	rows := Standings(d.Ledger().Club(), d.Ledger().Night())
	if len(rows) != 2 || rows[0].Games != 1 {
		t.Errorf("two set pairs make %d rows: %+v", len(rows), rows)
	}
}
