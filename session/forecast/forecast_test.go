package forecast_test

import (
	"os"
	"testing"
	"time"

	"pgregory.net/rapid"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
	"club/quadrille/session/forecast"
	"club/quadrille/session/simulation"
)

var toEleven = scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2}

// clubOf is a club with one simulated night, to learn its habits from.
func clubOf(t *testing.T, night simulation.Night) *session.Club {
	t.Helper()
	log := &session.MemoryLog{}
	if _, err := simulation.Run(t.Context(), log, night, nil); err != nil {
		t.Fatal(err)
	}
	ledger, err := session.Open(log)
	if err != nil {
		t.Fatal(err)
	}
	return ledger.Club()
}

// nightOf is the hall as a simulated night; in rounds, of as many as can begin before closing time.
func nightOf(h forecast.Hall, seed uint64) simulation.Night {
	n := simulation.Night{
		People: simulation.Invented(h.People, seed), Courts: h.Courts, Minutes: h.Minutes, Flow: h.Flow,
		Scoring: h.Rules, Late: h.Late, Leave: h.Leave, Seed: seed,
	}
	if h.Flow == session.Rounds {
		n.Rounds, n.Format = 30, scheduler.Ladder // whose rounds are planned one by one: how many there are is the same
	}
	return n
}

// inTime is how many games of the club's night were over by closing time; courts that call by themselves are
// judged by all that they called.
func inTime(n *session.Night) (games int) {
	for i := range n.Games {
		if n.Settings.Flow == session.Rolling || !n.Games[i].Finished.After(n.Settings.Closing) {
			games++
		}
	}
	return games
}

// halls are different enough that ranges of whole numbers come near 90 % in the mean.
func hallAt(i int, flow session.Flow) forecast.Hall {
	courts := 2 + i%4
	return forecast.Hall{
		People: 4*courts + 1 + i%9, Late: i % 4, Leave: i % 3, Courts: courts, Minutes: 90 + 7*(i%13), Flow: flow, Rules: toEleven,
	}
}

// A club's habits are learned from one night; other nights of the club then fall into the range that is
// called one of about 90 %.
func TestNightsFallIntoTheirRange(t *testing.T) {
	count, lowest, highest := 40, 0.75, 1.0
	if os.Getenv("QUADRILLE_LONG") != "" {
		count, lowest, highest = 400, 0.85, 0.95
	}
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		club := clubOf(t, nightOf(forecast.Hall{People: 28, Courts: 6, Minutes: 240, Flow: flow, Rules: toEleven}, 77))
		habit := forecast.Learned(club, toEleven)
		if habit.Games < 60 {
			t.Fatalf("%v: only %d games taught the club's habits", flow, habit.Games)
		}
		if flow == session.Rounds && habit.Gaps < 5 {
			t.Fatalf("only %d gaps between rounds taught the change of courts", habit.Gaps)
		}
		in, promised := 0, 0.0
		for i := range count {
			h := hallAt(i, flow)
			a, err := forecast.Of(h, habit, 1)
			if err != nil {
				t.Fatal(err)
			}
			n := clubOf(t, nightOf(h, uint64(1000+i))).Night()
			if g := inTime(n); g >= a.Games.Low && g <= a.Games.High {
				in++
			}
			promised += a.Games.Chance
		}
		share := float64(in) / float64(count)
		t.Logf("%v: %d of %d nights in their range, %.1f %%, promised %.1f %%", flow, in, count, 100*share, 100*promised/float64(count))
		if share < lowest || share > highest {
			t.Errorf("%v: %.1f %% of %d nights lie in the range of about 90 %%", flow, 100*share, count)
		}
	}
}

func TestACourtMoreAndPeopleFewerMeanMoreGames(t *testing.T) {
	for _, h := range []forecast.Hall{
		{People: 22, Courts: 4, Minutes: 150}, {People: 37, Courts: 7, Minutes: 180}, {People: 24, Courts: 3, Minutes: 240},
	} {
		h.Rules = toEleven
		for _, h.Flow = range []session.Flow{session.Rounds, session.Rolling} {
			all := forecast.Others(h, forecast.Learned(nil, toEleven), 1)
			if len(all) != 5 || all[0].Courts != h.Courts || all[0].People != h.People {
				t.Fatalf("%+v", all)
			}
			now, less, more, fewer, crowded := all[0], all[1], all[2], all[3], all[4]
			if less.Courts != h.Courts-1 || more.Courts != h.Courts+1 || fewer.People != h.People-3 || crowded.People != h.People+3 {
				t.Fatalf("%+v", all)
			}
			if less.Each >= now.Each && more.Each <= now.Each || less.Each > now.Each || more.Each < now.Each || fewer.Each < now.Each || crowded.Each > now.Each {
				t.Errorf("%v: %+v", h.Flow, all)
			}
			if less.Waiting <= now.Waiting || more.Waiting >= now.Waiting || fewer.Waiting >= now.Waiting || crowded.Waiting <= now.Waiting {
				t.Errorf("%v: %+v", h.Flow, all)
			}
		}
	}
}

// A court for which there are not people enough changes nothing.
func TestACourtWithoutPeopleStaysEmpty(t *testing.T) {
	for _, flow := range []session.Flow{session.Rounds, session.Rolling} {
		two := forecast.Hall{People: 10, Courts: 2, Minutes: 120, Flow: flow, Rules: toEleven}
		three := two
		three.Courts = 3
		a, err := forecast.Of(two, forecast.Learned(nil, toEleven), 1)
		if err != nil {
			t.Fatal(err)
		}
		b, err := forecast.Of(three, forecast.Learned(nil, toEleven), 1)
		if err != nil {
			t.Fatal(err)
		}
		if forecast.Sure(a.Each, forecast.Probable) != forecast.Sure(b.Each, forecast.Probable) {
			t.Errorf("%v: %v and %v", flow, a.Each, b.Each)
		}
	}
}

// Chances fall with the number, ranges hold their chance, and nothing lies outside of what can be.
func TestAnswersAreChances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := hallAt(rapid.IntRange(0, 500).Draw(t, "hall"), rapid.SampledFrom([]session.Flow{session.Rounds, session.Rolling}).Draw(t, "flow"))
		a, err := forecast.Of(h, forecast.Learned(nil, h.Rules), rapid.Uint64().Draw(t, "seed"))
		if err != nil {
			t.Fatal(err)
		}
		for _, list := range [][]forecast.AtLeast{a.Each, a.Rounds} {
			for i, x := range list {
				if x.N != i+1 || x.Chance < 0 || x.Chance > 1 || i > 0 && x.Chance > list[i-1].Chance {
					t.Fatalf("%v", list)
				}
			}
		}
		if a.Games.Low > a.Games.High || a.Games.Chance < 0.6 || a.Games.Chance > 1.0001 {
			t.Fatalf("%+v", a.Games)
		}
		if (h.Flow == session.Rolling) != (len(a.Rounds) == 0) || a.End.Median > a.End.P90 || a.Round <= 0 {
			t.Fatalf("%+v", a)
		}
	})
}

// Few games move the model by as much as they are worth, four against one, and a long night hardly leaves any
// of it.
func TestHabitsStartFromTheModel(t *testing.T) {
	model := forecast.Learned(nil, toEleven)
	if model.Games != 0 || model.Clock.Median() < 13.9 || model.Clock.Median() > 14.1 || model.Change != 3 {
		t.Errorf("%+v, half of the games within %.2f min", model, model.Clock.Median())
	}
	if long := forecast.Learned(nil, scoring.Rules{Scoring: scoring.SideOut, To: 21, WinBy: 2}); long.Clock.Median() < 1.9*14 {
		t.Errorf("a game to 21 takes %.1f min, and one to 11 takes 14", long.Clock.Median())
	}
	quick := &session.MemoryLog{}
	now := time.Date(2026, time.March, 3, 19, 0, 0, 0, time.UTC)
	desk, err := session.NewDesk(quick, func() time.Time { return now }, idsFrom(1))
	if err != nil {
		t.Fatal(err)
	}
	do := func(c session.Command) {
		t.Helper()
		if _, err := desk.Do(c); err != nil {
			t.Fatal(err)
		}
	}
	settings := session.DefaultSettings(1)
	do(session.OpenNight{Name: "quick", Settings: settings, Courts: 1})
	do(session.ImportRoster{Entries: simulation.Invented(4, 1)})
	for _, a := range desk.Ledger().Night().Roll {
		do(session.CheckIn{Person: a.Person})
	}
	do(session.CallRound{})
	now = now.Add(7 * time.Minute)
	final, err := toEleven.Final(11, 3, scoring.Played)
	if err != nil {
		t.Fatal(err)
	}
	do(session.FinishGame{Game: desk.Ledger().Night().Running()[0].ID, Final: final})
	one := forecast.Learned(desk.Ledger().Club(), toEleven)
	// ln of the median is the mean of the model's, four times, and of the game's, once: 14^(4/5) 7^(1/5).
	if m := one.Clock.Median(); one.Games != 1 || m < 12.1 || m > 12.3 {
		t.Errorf("%d games, half within %.2f min: 12.19 lies a fifth of the way to 7", one.Games, m)
	}
}

func idsFrom(n int) func() session.PersonID {
	return func() session.PersonID {
		n++
		return session.PersonID(time.Unix(int64(n), 0).UTC().Format("20060102150405"))
	}
}

func TestWhatCannotBeIsToldBefore(t *testing.T) {
	good := hallAt(3, session.Rounds)
	for name, change := range map[string]func(*forecast.Hall){
		"too few": func(h *forecast.Hall) { h.People = 3 }, "no court": func(h *forecast.Hall) { h.Courts = 0 },
		"no time": func(h *forecast.Hall) { h.Minutes = 0 }, "all late": func(h *forecast.Hall) { h.Late = h.People - 3 },
		"negative": func(h *forecast.Hall) { h.Leave = -1 }, "rules": func(h *forecast.Hall) { h.Rules.To = 0 },
	} {
		h := good
		change(&h)
		if _, err := forecast.Of(h, forecast.Learned(nil, toEleven), 1); err == nil {
			t.Errorf("%s: taken", name)
		}
	}
	if _, err := forecast.Of(good, forecast.Learned(nil, toEleven), 1); err != nil {
		t.Error(err)
	}
}
