package summary

import (
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/sessiontest"
)

// TestTheSummaryOfANight, counted by hand: four people on one court play three rounds with the same plan, a fifth
// comes late and waits.
func TestTheSummaryOfANight(t *testing.T) {
	d := sessiontest.New(t)
	if _, ok := Of(d.Ledger(), d.Clock); ok {
		t.Error("there is a summary without a night")
	}
	s := session.DefaultSettings(7)
	d.Must(session.OpenNight{Name: "test night", Settings: s, Courts: 1})
	for _, name := range []string{"Ann", "Bob", "Cat", "Dan"} {
		d.Must(session.AddGuest{Name: name})
	}
	team := func(a, b int) session.Team { return session.Team{d.Night().Roll[a].Person, d.Night().Roll[b].Person} }
	round := func(a, b session.Team, x, y int) {
		t.Helper()
		plan := session.PlannedRound{Games: []session.PlannedGame{{Court: "1", A: a, B: b}}}
		for _, p := range d.Night().Roll {
			if !a.Has(p.Person) && !b.Has(p.Person) {
				plan.Out = append(plan.Out, p.Person)
			}
		}
		d.Must(session.CallRound{Plan: []session.PlannedRound{plan}})
		d.Pass(10)
		g := d.Night().Running()[0]
		if g.A != a || g.B != b {
			t.Fatalf("the call is %v v %v", g.A, g.B)
		}
		d.Finish(g, x, y, scoring.Played)
		d.Pass(2)
	}
	round(team(0, 1), team(2, 3), 11, 3)
	d.Must(session.AddGuest{Name: "Eve"})
	round(team(0, 1), team(2, 3), 11, 9)
	round(team(0, 2), team(1, 3), 12, 10)
	d.Must(session.EndNight{})

	got, ok := Of(d.Ledger(), d.Clock)
	if !ok {
		t.Fatal("there is no summary")
	}
	if got.People != 5 || got.Games != 3 || got.Rounds != 3 || got.Void+got.Running != 0 || got.Fewest != 0 || got.Most != 3 || got.SatOut != [2]int{0, 2} {
		t.Errorf("counted is %+v", got)
	}
	if len(got.Courts) != 1 || got.Courts[0].Games != 3 || got.Courts[0].Idle != 4 {
		t.Errorf("the courts are %+v, want 3 games and 4 minutes idle", got.Courts)
	}
	if got.Leaders[0].Name != "Ann" || got.Leaders[0].Wins != 3 || got.Leaders[0].Difference != 12 {
		t.Errorf("the leaders are %+v", got.Leaders)
	}
	if c := got.Closest; c == nil || c.Score != "12-10" || c.Round != 3 || !slices.Equal(c.A, []string{"Ann", "Cat"}) {
		t.Errorf("the closest game is %+v, want 12-10, which has more points than 11-9", got.Closest)
	}
	if got.Repeats != 2 || len(got.Again) != 2 || got.Again[0] != (Pair{[2]string{"Ann", "Bob"}, 2}) {
		t.Errorf("%d repeats, most often %+v", got.Repeats, got.Again)
	}
	if len(got.Met) != 6 || got.Met[0].Times != 3 {
		t.Errorf("who met most is %+v", got.Met)
	}
	if got.Wait == nil || got.Wait.Minutes != 2 {
		t.Errorf("the longest wait is %+v, want 2 minutes: Eve never had a game", got.Wait)
	}
	text := ""
	for _, p := range got.Words(time.UTC) {
		text += p.Title + ": " + strings.Join(p.Lines, "; ") + "\n"
	}
	for _, want := range []string{
		"20 November 2026, 19:00 to 19:36; 5 people came; 3 games in 3 rounds on 1 court",
		"1  Ann: 3 of 3 won, +12 points",
		"everybody who came had 0 to 3 games; everybody sat out 0 to 2 rounds",
		"2 games of two who had been partners before, most often Ann and Bob; Cat and Dan (2 times)",
		"court 1: 3 games, idle 4 min",
		"the closest: Ann & Cat 12-10 Bob & Dan (court 1, round 3)",
		"on one court most often: Ann and Bob; Ann and Cat; Ann and Dan; and 3 more pairs (3 times)",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the words are\n%s\nand do not have %q", text, want)
		}
	}
}

// TestTheFewestGamesAreThoseOfWhoeverCame: where everybody played, nobody had none; and a wait of just a minute counts.
func TestTheFewestGamesAreThoseOfWhoeverCame(t *testing.T) {
	d := sessiontest.Open(t, sessiontest.Flow(session.Rounds), 1, 4)
	for range 2 {
		d.Must(session.CallRound{})
		d.Pass(10)
		d.Finish(d.Night().Running()[0], 11, 3, scoring.Played)
		d.Pass(1)
	}
	d.Must(session.EndNight{})
	got, _ := Of(d.Ledger(), d.Clock)
	if got.People != 4 || got.Fewest != 2 || got.Most != 2 || got.SatOut != [2]int{0, 0} {
		t.Errorf("counted is %+v", got)
	}
	if got.Wait == nil || got.Wait.Minutes != 1 {
		t.Errorf("the longest wait is %+v, want 1 minute", got.Wait)
	}
}
