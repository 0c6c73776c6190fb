package session

import (
	"testing"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
)

// TestCompanyIsCountedByHand: four people play twelve games with the same partners and then one with others; a void game
// counts for nothing.
func TestCompanyIsCountedByHand(t *testing.T) {
	d, _, _ := newTestDesk(t)
	withPeople(t, d, 1, 4, Rounds)
	roll := d.Ledger().Night().Roll
	a, b, c, e := roll[0].Person, roll[1].Person, roll[2].Person, roll[3].Person
	play := func(one, two Team, x, y int, how scoring.How) {
		t.Helper()
		must(t, d, CallRound{Plan: []PlannedRound{{Games: []PlannedGame{{"1", one, two}}}}})
		g := d.Ledger().Night().Running()[0]
		f, err := g.Rules.Final(x, y, how)
		if err != nil || g.A != one {
			t.Fatal(err, g)
		}
		must(t, d, FinishGame{g.ID, f})
	}
	for i := range 12 {
		if i%4 == 3 {
			play(Team{a, b}, Team{c, e}, 5, 11, scoring.Played)
		} else {
			play(Team{a, b}, Team{c, e}, 11, 7, scoring.Played)
		}
	}
	play(Team{a, c}, Team{e, b}, 11, 2, scoring.Played)
	play(Team{a, c}, Team{e, b}, 0, 0, scoring.Void)
	club := d.Ledger().Club()
	all := Partners(club, Span{})
	if len(all) != 4 || all[0].A != a || all[0].B != b || all[0].Games != 12 || all[0].Won != 9 || !all[0].Enough() || all[1].Won != 3 || all[1].Games != 12 {
		t.Fatalf("partners are %+v", all)
	}
	if all[2].Games != 1 || EnoughGames <= 3 || all[2].Enough() || all[2].Won+all[3].Won != 1 || all[0].Low < 0.46 || all[0].Low > 0.47 || all[0].High < 0.91 || all[0].High > 0.92 {
		t.Errorf("partners are %+v", all) // 9 of 12 by Wilson: 0.468 to 0.911
	}
	if got := With(club, a, Span{}); len(got) != 2 || got[0] != (Company{a, b, 12, 9, all[0].Low, all[0].High}) || got[1].B != c || got[1].Won != 1 {
		t.Errorf("a's partners are %+v", got)
	}
	got := Against(club, c, Span{})
	if len(got) != 3 || got[0].A != c || got[0].Games+got[1].Games+got[2].Games != 26 {
		t.Fatalf("c met %+v", got)
	}
	for _, x := range got {
		if want := map[PersonID][2]float64{a: {12, 3}, b: {13, 4}, e: {1, 1}}[x.B]; float64(x.Games) != want[0] || x.Won != want[1] {
			t.Errorf("c met %s in %d games and won %.1f, want %v", x.B, x.Games, x.Won, want)
		}
	}
	day := time.Date(2026, 11, 20, 0, 0, 0, 0, time.UTC)
	mixed, rotating := scheduler.Mixed, scheduler.Rotating
	for _, s := range []struct {
		span Span
		some bool
	}{
		{Span{From: day, Until: day}, true},
		{Span{From: day.AddDate(0, 0, 1)}, false},
		{Span{Until: day.AddDate(0, 0, -1)}, false},
		{Span{Format: &rotating}, true},
		{Span{Format: &mixed}, false},
	} {
		if some := len(Partners(club, s.span)) > 0; some != s.some {
			t.Errorf("%+v has games: %v", s.span, some)
		}
	}
}
