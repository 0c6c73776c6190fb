package session

import (
	"testing"
	"time"

	"club/quadrille/scoring"
)

// TestSuggestCountsRounds: the rounds it takes are those that the missing games fill, and never fewer
// than one person's missing games.
func TestSuggestCountsRounds(t *testing.T) {
	for name, c := range map[string]struct {
		courts, people, games int
		flow                  Flow
		rounds                int
	}{
		"all play":             {2, 8, 6, Rounds, 6},
		"four sit out":         {2, 12, 6, Rounds, 9},
		"an odd number":        {2, 9, 3, Rounds, 4},
		"more courts than can": {4, 9, 6, Rounds, 7},
		"rolling":              {3, 12, 5, Rolling, 5},
	} {
		t.Run(name, func(t *testing.T) {
			d, _, clock := newTestDesk(t)
			withPeople(t, d, c.courts, c.people, c.flow)
			f, err := d.Ledger().Night().Suggest(Wish{c.games, evening.Add(3 * time.Hour)}, clock.now)
			if err != nil {
				t.Fatal(err)
			}
			if f.Rounds != c.rounds || len(f.Options) == 0 || f.Options[0].Rounds != c.rounds {
				t.Errorf("it takes %d rounds, want %d", f.Rounds, c.rounds)
			}
		})
	}
}

// TestShorterGamesForLessTime: the earlier the hall closes, the shorter the games that are proposed;
// chances rise as games get shorter.
func TestShorterGamesForLessTime(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	n, last := d.Ledger().Night(), 0
	for _, minutes := range []int{180, 120, 95, 80, 60} {
		f, err := n.Suggest(Wish{6, evening.Add(time.Duration(minutes) * time.Minute)}, clock.now)
		if err != nil {
			t.Fatal(err)
		}
		if f.Best < last {
			t.Errorf("in %d minutes option %d is best, though %d was with more time", minutes, f.Best, last)
		}
		last = f.Best
		for i := 1; i < len(f.Options); i++ {
			if f.Options[i].Chance < f.Options[i-1].Chance-1e-9 {
				t.Errorf("in %d minutes %v fits with %.3f, and %v with %.3f", minutes,
					f.Options[i].Rules, f.Options[i].Chance, f.Options[i-1].Rules, f.Options[i-1].Chance)
			}
		}
		if f.Best == 0 && f.Fit.Probable < f.Rounds {
			t.Errorf("in %d minutes %d rounds fit at 80 %%, and still the present rules are proposed for %d", minutes, f.Fit.Probable, f.Rounds)
		}
	}
	if last == 0 {
		t.Error("six games of 12 minutes fit into an hour")
	}
}

func TestSuggestRefusesWhatCannotBe(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 1, 3, Rounds)
	suggest := func(games int, closing time.Time) error {
		_, err := d.Ledger().Night().Suggest(Wish{games, closing}, clock.now)
		return err
	}
	late := evening.Add(2 * time.Hour)
	if err := suggest(6, late); err == nil {
		t.Error("three people fill a court")
	}
	must(t, d, AddGuest{Name: "Fourth"})
	if err := suggest(0, late); err == nil {
		t.Error("nobody wishes for no game")
	}
	if err := suggest(6, evening.Add(-time.Minute)); err == nil {
		t.Error("closing time has passed")
	}
	playRound(t, d, clock)
	if err := suggest(1, late); err == nil {
		t.Error("everybody had a game already")
	}
}

// TestTakingAnOption: the settings that an option leads to are valid and say what it said.
func TestTakingAnOption(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	playRound(t, d, clock)
	closing := evening.Add(75 * time.Minute)
	f, err := d.Ledger().Night().Suggest(Wish{6, closing}, clock.now)
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range f.Options {
		s := d.Ledger().Night().Take(o, closing)
		if err := s.Validate(); err != nil {
			t.Fatalf("%v: %v", o.Rules, err)
		}
		if s.Rounds != 1+o.Rounds || s.Scoring != o.Rules || !s.Closing.Equal(closing) {
			t.Errorf("%v leads to %d rounds of %v until %v", o.Rules, s.Rounds, s.Scoring, s.Closing)
		}
	}
	must(t, d, ChangeSettings{d.Ledger().Night().Take(f.Options[1], closing)})
}

// TestTheClockKnowsHowLongOtherGamesWere: games to 21 say how long a game to 11 takes.
func TestTheClockKnowsHowLongOtherGamesWere(t *testing.T) {
	d, _, clock := newTestDesk(t)
	withPeople(t, d, 2, 8, Rounds)
	s := d.Ledger().Night().Settings
	s.Scoring.To, s.Slot = 21, 30
	must(t, d, ChangeSettings{s})
	long, err := s.Scoring.Final(21, 15, scoring.Played)
	if err != nil {
		t.Fatal(err)
	}
	for range 3 {
		must(t, d, CallRound{})
		clock.now = clock.now.Add(27 * time.Minute)
		for _, g := range d.Ledger().Night().Running() {
			must(t, d, FinishGame{Game: g.ID, Final: long})
		}
	}
	before := d.Ledger().Night().Clock().Median()
	s.Scoring.To, s.Slot = 11, 16
	must(t, d, ChangeSettings{s})
	if after := d.Ledger().Night().Clock().Median(); after > 0.65*before || after < 0.4*before {
		t.Errorf("a game to 21 takes %.1f minutes and one to 11 %.1f", before, after)
	}
}
