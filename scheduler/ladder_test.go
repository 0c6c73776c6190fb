package scheduler

import (
	"context"
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"club/quadrille/scheduler/night/nighttest"
)

// ladderNight plans the first round of a ladder of people whose level falls with their number.
func ladderNight(t testing.TB, people, courts int) (Problem, Round) {
	t.Helper()
	p := nighttest.Club(people, courts, 1)
	p.Format = Ladder
	for i := range p.People {
		p.People[i].Level = 5 - float64(i)/20
	}
	rounds, err := Plan(context.Background(), p, Budget{})
	if err != nil {
		t.Fatal(err)
	}
	return p, rounds[0]
}

func TestFirstRoundOfTheLadderIsByLevel(t *testing.T) {
	_, r := ladderNight(t, 12, 3)
	for c, g := range r.Games {
		four := g.Players()
		slices.Sort(four)
		if want := []Player{Player(4 * c), Player(4*c + 1), Player(4*c + 2), Player(4*c + 3)}; !slices.Equal(four, want) {
			t.Errorf("court %d has %v, want %v", c+1, four, want)
		}
		if !g.Partners(four[0], four[3]) {
			t.Errorf("court %d does not balance: %+v", c+1, g)
		}
	}
}

func TestWinnersMoveUpAndSplit(t *testing.T) {
	p, r := ladderNight(t, 12, 3)
	p.History = []Round{r}
	var results []Result
	for _, g := range r.Games {
		results = append(results, Result{Game: g, Winner: 0})
	}
	next, err := NextLadder(p, results)
	if err != nil {
		t.Fatal(err)
	}
	for c, from := range [][2]Team{
		{r.Games[0].A, r.Games[1].A}, // the top court's winners stay
		{r.Games[0].B, r.Games[2].A},
		{r.Games[1].B, r.Games[2].B}, // the bottom court's losers stay
	} {
		g := next.Games[c]
		for _, team := range from {
			if !slices.Contains(g.Players(), team[0]) || !slices.Contains(g.Players(), team[1]) {
				t.Errorf("court %d has %v, want %v", c+1, g.Players(), from)
			}
			if g.Partners(team[0], team[1]) {
				t.Errorf("court %d does not split %v", c+1, team)
			}
		}
	}
}

// TestLadderNight plays any ladder: absences, sit-outs, ties and keep-aparts.
func TestLadderNight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		courts := rapid.IntRange(2, 6).Draw(t, "courts")
		p := nighttest.Club(4*courts+rapid.IntRange(0, 6).Draw(t, "more"), courts, 1)
		p.Format = Ladder
		p.Seed = rapid.Uint64().Draw(t, "seed")
		p.NeverMeet = []Pair{{A: 0, B: 1}}
		p.People[2].Arrive = rapid.IntRange(0, 2).Draw(t, "arrives")
		p.People[3].Leave = rapid.IntRange(0, 3).Draw(t, "leaves")
		var last []Result
		for k := range 4 {
			var r Round
			var err error
			if k == 0 {
				var rounds []Round
				if rounds, err = Plan(context.Background(), p, Budget{}); err == nil {
					r = rounds[0]
				}
			} else {
				r, err = NextLadder(p, last)
			}
			if err != nil {
				t.Fatal(err)
			}
			if found := Audit(p, []Round{r}); len(found) > 0 {
				t.Fatal(found[0].Text)
			}
			p.History = append(p.History, r)
			last = last[:0]
			for _, g := range r.Games {
				last = append(last, Result{Game: g, Winner: rapid.IntRange(-1, 1).Draw(t, "winner")})
			}
		}
		cert := Certify(p, nil)
		if cert.SitoutSpread.Value > 2 {
			t.Fatalf("sit-out spread %+v", cert.SitoutSpread)
		}
	})
}

func TestLadderRefusesStrangeResults(t *testing.T) {
	p, r := ladderNight(t, 8, 2)
	p.History = []Round{r}
	if _, err := NextLadder(p, []Result{{Game: Game{Court: 7}, Winner: 0}}); err == nil {
		t.Error("a result from a court that does not exist is taken")
	}
	p.NeverMeet = nil
	for a := range Player(8) {
		for b := range a {
			p.NeverMeet = append(p.NeverMeet, Pair{A: a, B: b})
		}
	}
	var conflict *Conflict
	if _, err := NextLadder(p, nil); !errors.As(err, &conflict) {
		t.Errorf("people who must not meet are seated: %v", err)
	}
}
