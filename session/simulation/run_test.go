package simulation

import (
	"context"
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"club/quadrille/scheduler"
	"club/quadrille/scoring"
	"club/quadrille/session"
)

var sideOut = scoring.Rules{Scoring: scoring.SideOut, To: 11, WinBy: 2}

// nights are the kinds of night that the tests play.
func nights(seed uint64) map[string]Night {
	return map[string]Night{
		"rounds":         {People: Invented(13, seed), Courts: 3, Rounds: 3, Flow: session.Rounds, Scoring: sideOut, Late: 2, Leave: 1, Seed: seed},
		"rounds by time": {People: Invented(10, seed), Courts: 2, Minutes: 60, Flow: session.Rounds, Scoring: sideOut, Late: 1, Leave: 1, Seed: seed},
		"rolling":        {People: Invented(26, seed), Courts: 5, Minutes: 120, Flow: session.Rolling, Scoring: sideOut, Late: 4, Leave: 3, Seed: seed},
		"rolling by rounds": {
			People: Invented(11, seed), Courts: 2, Rounds: 4, Flow: session.Rolling, ByRally: 1,
			Scoring: scoring.Rules{Scoring: scoring.RallyScoring, To: 15, WinBy: 1}, Seed: seed,
		},
		"mixed": {People: Invented(8, seed), Courts: 2, Rounds: 2, Flow: session.Rounds, Format: scheduler.Mixed, Scoring: sideOut, Seed: seed},
	}
}

func play(t *testing.T, n Night) (*session.MemoryLog, Report) {
	t.Helper()
	log := &session.MemoryLog{}
	r, err := Run(t.Context(), log, n, nil)
	if err != nil {
		t.Fatal(err)
	}
	return log, r
}

func recordsOf(t *testing.T, log session.Log) []session.Record {
	t.Helper()
	var out []session.Record
	for r, err := range log.Records(1) {
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, r)
	}
	return out
}

func TestEqualNightsGiveEqualRecords(t *testing.T) {
	for name, n := range nights(5) {
		t.Run(name, func(t *testing.T) {
			first, r1 := play(t, n)
			second, r2 := play(t, n)
			if !reflect.DeepEqual(recordsOf(t, first), recordsOf(t, second)) || !reflect.DeepEqual(r1, r2) {
				t.Error("the same night went differently")
			}
			n.Seed++
			if other, _ := play(t, n); reflect.DeepEqual(recordsOf(t, first), recordsOf(t, other)) {
				t.Error("another seed changed nothing")
			}
		})
	}
}

// stopping is a log that breaks off after so many actions.
type stopping struct {
	session.MemoryLog
	left int
}

var errStopped = errors.New("stopped")

func (s *stopping) Append(recs []session.Record) error {
	if s.left--; s.left < 0 {
		return errStopped
	}
	return s.MemoryLog.Append(recs)
}

// Wherever a night breaks off, it goes on to the same end.
func TestNightGoesOnFromItsLogAlone(t *testing.T) {
	for name, n := range nights(2) {
		step := 9
		if n.Flow == session.Rounds {
			step = 35 // planning takes its time
		}
		t.Run(name, func(t *testing.T) {
			whole, _ := play(t, n)
			want := recordsOf(t, whole)
			for actions := 0; ; actions += step {
				log := &stopping{left: actions}
				_, err := Run(t.Context(), log, n, nil)
				if err == nil {
					break
				}
				if !errors.Is(err, errStopped) {
					t.Fatal(err)
				}
				if _, err := Run(t.Context(), &log.MemoryLog, n, nil); err != nil {
					t.Fatalf("after %d actions: %v", actions, err)
				}
				if got := recordsOf(t, log); !reflect.DeepEqual(got, want) {
					t.Fatalf("after %d actions the night ended with %d records, not the same %d", actions, len(got), len(want))
				}
			}
		})
	}
}

// What must hold of every night, seen from its end.
func TestNobodyIsInTwoPlaces(t *testing.T) {
	for seed := range uint64(2) {
		for name, n := range nights(seed + 10) {
			log, r := play(t, n)
			l, err := session.Load(log.Records(1))
			if err != nil {
				t.Fatal(err)
			}
			night := l.Club().Night()
			if night.IsOpen() {
				t.Fatalf("%s: the night is still open", name)
			}
			if r.Games != len(night.Games) || r.Events != int(log.Last()) || r.Games == 0 {
				t.Errorf("%s: report %+v of %d games and %d records", name, r, len(night.Games), log.Last())
			}
			checkCertificate(t, r.Certificate)
			checkGames(t, night)
			checkPresence(t, night)
		}
	}
}

// checkCertificate holds values to their bounds.
func checkCertificate(t *testing.T, c scheduler.Certificate) {
	t.Helper()
	for _, v := range []scheduler.Value{
		c.PartnerRepeats, c.PartnerEvenness, c.OpponentEvenness, c.MeetingEvenness, c.SitoutSpread, c.BenchedTwice, c.CourtSpread,
	} {
		if v.Gap() < 0 || v.Bound < 0 {
			t.Errorf("a value below its bound: %+v", c)
		}
	}
}

// checkGames holds games to one court and one person at a time.
func checkGames(t *testing.T, n *session.Night) {
	t.Helper()
	for i := range n.Games {
		g := &n.Games[i]
		who := g.Players()
		slices.Sort(who)
		if len(slices.Compact(who)) != 4 || !g.Finished.After(g.Called) || g.Rules.Check(*g.Final) != nil {
			t.Errorf("game %d is none: %+v", g.ID, g)
		}
		for j := range n.Games[:i] {
			o := &n.Games[j]
			apart := !o.Finished.After(g.Called) || !g.Finished.After(o.Called)
			if !apart && (o.Court == g.Court || slices.ContainsFunc(who, o.Has)) {
				t.Errorf("games %d and %d overlap", o.ID, g.ID)
			}
		}
	}
}

// checkPresence holds calls to people who are there. Who goes home in the very second of a call may have gone after it.
func checkPresence(t *testing.T, n *session.Night) {
	t.Helper()
	for i := range n.Games {
		g := &n.Games[i]
		for _, id := range g.Players() {
			a := n.Attending(id)
			if g.Called.Before(a.Arrived) || g.Called.After(a.Arrived.Add(a.Present)) {
				t.Errorf("game %d calls somebody at %v who is there from %v for %v", g.ID, g.Called, a.Arrived, a.Present)
			}
		}
	}
}

// A night that scores rally by rally comes to the same results as one that enters final scores.
func TestRalliesComeToTheSameScores(t *testing.T) {
	n := nights(3)["rolling by rounds"]
	rallied, _ := play(t, n)
	n.ByRally = 0
	entered, _ := play(t, n)
	var finals [2][]scoring.Final
	for i, log := range []*session.MemoryLog{rallied, entered} {
		l, err := session.Load(log.Records(1))
		if err != nil {
			t.Fatal(err)
		}
		for _, g := range l.Club().Night().Games {
			finals[i] = append(finals[i], *g.Final)
		}
	}
	if !slices.Equal(finals[0], finals[1]) {
		t.Errorf("rally by rally %v\nentered %v", finals[0], finals[1])
	}
	if rallied.Last() < entered.Last()+100 {
		t.Errorf("%d records rally by rally, %d without", rallied.Last(), entered.Last())
	}
}

func TestLateAndEarlyAreAsMany(t *testing.T) {
	n := nights(1)["rolling"]
	log, _ := play(t, n)
	l, err := session.Load(log.Records(1))
	if err != nil {
		t.Fatal(err)
	}
	night := l.Club().Night()
	late, early := 0, 0
	for _, a := range night.Roll {
		if a.Arrived.After(n.firstCall()) {
			late++
		}
		if a.Arrived.Add(a.Present).Before(night.Closed) {
			early++
		}
	}
	if late != n.Late || early != n.Leave {
		t.Errorf("%d came late and %d left early, not %d and %d", late, early, n.Late, n.Leave)
	}
}

func TestOtherPeoplesFilesAreLeftAlone(t *testing.T) {
	n := nights(1)["rounds"]
	log, _ := play(t, n)
	before := log.Last()
	for name, other := range map[string]Night{"another roster": nights(1)["rolling"], "another seed": nights(2)["rounds"]} {
		if _, err := Run(t.Context(), log, other, nil); err == nil || !strings.Contains(err.Error(), "a file of its own") {
			t.Errorf("%s: %v", name, err)
		}
	}
	if log.Last() != before {
		t.Error("something was written")
	}
}

func TestStopsWhenAsked(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	actions := 0
	_, err := Run(ctx, &session.MemoryLog{}, nights(1)["rolling"], func(uint64) error {
		if actions++; actions == 7 {
			stop()
		}
		return nil
	})
	if !errors.Is(err, context.Canceled) || actions != 7 {
		t.Errorf("stopped after %d actions with %v", actions, err)
	}
}

func TestImpossibleNightsAreRefused(t *testing.T) {
	tests := map[string]func(*Night){
		"four people or more":     func(n *Night) { n.People = n.People[:3] },
		"courts, not 0":           func(n *Night) { n.Courts = 0 },
		"minutes, not -1":         func(n *Night) { n.Minutes = -1 },
		"too many of 13":          func(n *Night) { n.Late = 10 },
		"1 to 60 rounds, not 99":  func(n *Night) { n.Rounds = 99 },
		"no flow is called":       func(n *Night) { n.Flow = "sideways" },
		"a game goes to 1 point ": func(n *Night) { n.Scoring.To = 0 },
	}
	for want, spoil := range tests {
		n := nights(1)["rounds"]
		spoil(&n)
		if _, err := Run(t.Context(), &session.MemoryLog{}, n, nil); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want one with %q", err, want)
		}
	}
}

// Games are about as long as they are said to be, and the stronger side wins more often.
func TestChanceIsAsItIsSaid(t *testing.T) {
	n := Night{Seed: 1}
	const games = 4000
	var total time.Duration
	longer, wins := 0, 0
	for id := session.GameID(1); id <= games; id++ {
		d := n.duration(id)
		total += d
		if d > medianGame {
			longer++
		}
		final, err := n.final(id, sideOut, 1)
		if err != nil {
			t.Fatal(err)
		}
		if side, _ := final.Winner(); side == scoring.A {
			wins++
		}
	}
	// The median of 4,000 lies within 4 standard deviations of one half: 0.5 ± 4·0.5/√4000.
	if share := float64(longer) / games; share < 0.468 || share > 0.532 {
		t.Errorf("%.3f of the games are longer than the median", share)
	}
	// A mean of 14·exp(0.25²/2) = 14.4 minutes.
	if mean := total.Minutes() / games; mean < 14.2 || mean > 14.7 {
		t.Errorf("games take %.2f minutes", mean)
	}
	// A lead of one level: scheduler.WinChance says 0.76.
	if got, want := float64(wins)/games, scheduler.WinChance(1, 0); got < want-0.04 || got > want+0.04 {
		t.Errorf("a side one level ahead wins %.3f of its games, not about %.3f", got, want)
	}
}
